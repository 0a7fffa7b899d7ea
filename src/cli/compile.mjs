// How do the sources become the program that runs? Bundled into .build/, with the digest of all that shapes a page baked in.
// Plain JavaScript, because the oldest Node that is served can't read TypeScript by itself.
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const out = join(root, ".build");
const names = (folder) =>
  readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(root, join(entry.parentPath ?? entry.path, entry.name)).replaceAll("\\", "/"));

const digestOf = (files) => {
  const hash = createHash("sha256");
  for (const file of [...files].sort()) hash.update(`${file}\0`).update(readFileSync(join(root, file)));
  return hash.digest("hex");
};

const wanted = process.argv.slice(2);
const sources = [...names("src"), ...names("layouts"), "package.json", ...(existsSync(join(root, "package-lock.json")) ? ["package-lock.json"] : [])];
const digest = digestOf(sources);
const bench = wanted.includes("bench");
const stamp = bench ? `${digest} ${digestOf(names("tests/bench"))}` : digest;
const stampFile = join(out, "stamp");
const made = existsSync(stampFile) ? readFileSync(stampFile, "utf8") : "";

if (made !== stamp && (bench || !made.startsWith(digest))) {
  let esbuild;
  try {
    esbuild = await import("esbuild");
  } catch {
    console.error("the program can't be compiled without its development dependencies; run: npm ci");
    process.exit(existsSync(join(out, "main.js")) || process.env.npm_lifecycle_event === "prepare" ? 0 : 2);
  }
  const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  rmSync(out, { recursive: true, force: true });
  await esbuild.build({
    absWorkingDir: root,
    entryPoints: [
      { in: "src/cli/main.ts", out: "main" },
      { in: "src/cli/shard-worker.ts", out: "shard-worker" },
      ...(bench ? ["bench", "bare-client"].map((name) => ({ in: `tests/bench/${name}.ts`, out: name })) : []),
    ],
    outdir: out,
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "node",
    target: "node20",
    minifyWhitespace: true,
    minifySyntax: true,
    // The browser client is bundled, which makes it load in a third of the time; it looks for TypeScript only to read a settings file.
    external: ["@11ty/eleventy", "nunjucks", "@sparticuz/chromium", "tar-fs", "esbuild", "typescript"],
    define: { REEVEBOOK_VERSION: JSON.stringify(version), REEVEBOOK_DIGEST: JSON.stringify(digest) },
    // Bundled packages in the old module format ask for Node's own modules by require().
    banner: { js: 'import{createRequire as reevebookRequire}from"node:module";const require=reevebookRequire(import.meta.url);' },
    logLevel: "warning",
  });
  await esbuild.build({
    absWorkingDir: root,
    entryPoints: ["src/site/search-client.ts"],
    outfile: join(out, "search.js"),
    bundle: true,
    minify: true,
    format: "iife",
    target: "es2020",
    logLevel: "warning",
  });
  writeFileSync(stampFile, stamp);
}
