// How do the sources become the program that runs? Bundled into .build/, with the digest of all that shapes a page baked in.
// Plain JavaScript, because the oldest Node that is served can't read TypeScript by itself.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, posix, relative } from "node:path";
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

/** Builds one example, so that what is kept of the scripts holds the functions that a build calls. If it can't, nothing is kept. */
const rehearse = () => {
  const job = existsSync(join(root, "jobs")) ? names("jobs").filter((name) => /(?<!\.(?:record|issued))\.yaml$/.test(name)).sort()[0] : undefined;
  if (job === undefined) return;
  const folder = mkdtempSync(join(tmpdir(), "reevebook-rehearsal-"));
  const env = { ...process.env, REEVEBOOK_KEEP_COMPILED: "1" };
  spawnSync(process.execPath, [join(out, "main.js"), "build", "--out", folder, join(root, job)], { env, stdio: "ignore", timeout: 60_000 });
  rmSync(folder, { recursive: true, force: true });
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
  /** Three files of the site engine look for their neighbours from where they are, so they are told where they were. */
  const engine = {
    name: "engine",
    setup: (build) =>
      build.onLoad({ filter: /[\\/]@11ty[\\/]eleventy[\\/]src[\\/]Util[\\/]\w+\.js$/ }, ({ path }) => {
        const text = readFileSync(path, "utf8");
        return text.includes("import.meta.url")
          ? { contents: text.replaceAll("import.meta.url", `new URL(${JSON.stringify(relative(out, path).replaceAll("\\", "/"))}, here).href`), loader: "js" }
          : undefined;
      }),
  };
  /**
   * Most of the browser client is there to download, find and start browsers, and to speak other protocols, which is never
   * asked of it here: its part that connects is taken, and what that would load only when asked stays outside.
   */
  const clientOnly = {
    name: "client only",
    setup: (build) => {
      const kind = "import-statement";
      build.onResolve({ filter: /^puppeteer$/ }, async ({ pluginData, resolveDir }) => {
        if (pluginData === clientOnly) return undefined;
        const whole = await build.resolve("puppeteer", { kind, resolveDir, pluginData: clientOnly });
        return build.resolve("puppeteer-core/internal/puppeteer-core-browser.js", { kind, resolveDir: dirname(whole.path) });
      });
      build.onResolve({ filter: /^@puppeteer\/browsers$|^\.\.?\// }, ({ path, importer, kind: asked }) => {
        const [, inside] = /[\\/]puppeteer-core[\\/]lib[\\/]esm[\\/]puppeteer[\\/](.*)$/.exec(importer) ?? [];
        if (asked !== "dynamic-import" || inside === undefined) return undefined;
        return { path: path.startsWith(".") ? posix.join("puppeteer-core/internal", posix.dirname(inside.replaceAll("\\", "/")), path) : path, external: true };
      });
    },
  };
  /** The reader of YAML asks for two variables of the environment at every sign of a file, to help those who work on it: a fifth of its time. */
  const noTokenLog = {
    name: "no log of tokens",
    setup: (build) =>
      build.onLoad({ filter: /[\\/]yaml[\\/](?:browser[\\/])?dist[\\/](?:parse[\\/]parser|compose[\\/]composer)\.js$/ }, ({ path }) => ({
        contents: readFileSync(path, "utf8").replaceAll(/\bnode_process\.env\.LOG_(?:TOKENS|STREAM)\b/g, "false"),
        loader: "js",
      })),
  };
  /** The two large packages, and the larger part of the program, are scripts of their own, of which the compiled form is kept. */
  const large = [
    { asked: /^puppeteer$/, file: "client", taken: { connect: "puppeteer" } },
    // Layouts are compiled by the engine and call filters of ours: both must mean the same template package.
    { asked: /^@11ty\/eleventy$/, file: "engine", taken: { Eleventy: "@11ty/eleventy" }, given: "nunjucks" },
    // What builds, what a helping thread does of it, and what makes an issued packet again.
    {
      asked: /\/(?:build-command|shard|remake)\.ts$/,
      file: "work",
      taken: { build: "./src/cli/build-command.ts", localShard: "./src/cli/shard.ts", makeRemaker: "./src/cli/remake.ts" },
    },
  ];
  const apart = (kinds) => ({
    name: "large scripts apart",
    setup: (build) => {
      for (const { asked, file, taken, given } of large) {
        build.onResolve({ filter: asked }, ({ kind }) => (kinds.includes(kind) ? { path: file, namespace: `apart-${file}` } : undefined));
        build.onLoad({ filter: /./, namespace: `apart-${file}` }, () => ({
          contents:
            (given === undefined ? "const given = {};" : `import one from "${given}";const given = { "${given}": one };`) +
            `import { fileURLToPath } from "node:url";import { loadCached } from ${JSON.stringify(join(root, "src", "cli", "load-cached.mjs"))};` +
            `export const { ${Object.keys(taken).join(", ")} } = loadCached(fileURLToPath(new URL("./${file}.cjs", import.meta.url)), given);`,
          loader: "js",
          resolveDir: root,
        }));
      }
    },
  });
  const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  const defines = { REEVEBOOK_VERSION: JSON.stringify(version), REEVEBOOK_DIGEST: JSON.stringify(digest) };
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
    external: ["@sparticuz/chromium", "tar-fs", "esbuild", "typescript"],
    plugins: [apart(["dynamic-import"]), noTokenLog],
    define: defines,
    // Bundled packages in the old module format ask for Node's own modules by require().
    banner: { js: 'import{createRequire as reevebookRequire}from"node:module";const require=reevebookRequire(import.meta.url);' },
    logLevel: "warning",
  });
  for (const { file, taken, given } of large) {
    await esbuild.build({
      absWorkingDir: root,
      stdin: { contents: Object.entries(taken).map(([one, from]) => `export { ${one} } from ${JSON.stringify(from)};`).join(""), resolveDir: root },
      outfile: join(out, `${file}.cjs`),
      bundle: true,
      format: "cjs",
      platform: "node",
      target: "node20",
      minifyWhitespace: true,
      minifySyntax: true,
      // TypeScript is looked for only to read a settings file, the development server only to serve.
      external: ["@11ty/eleventy-dev-server", "@sparticuz/chromium", "typescript", "fsevents", "tar-fs", ...(given === undefined ? [] : [given])],
      plugins: [apart(["dynamic-import"]), engine, clientOnly, noTokenLog],
      define: { ...defines, "import.meta.url": "here" },
      banner: { js: 'const here=require("node:url").pathToFileURL(__filename).href;' },
      logLevel: "error",
    });
  }
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
  rehearse();
  writeFileSync(stampFile, stamp);
}
