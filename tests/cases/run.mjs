// What does this program give for the cases of a reference file, and how far is that from what the file has?
// npm run cases [-- FILE]: a file with families as in tests/support/reference-cases.json. Prints one line for each case; with --out FILE
// it also writes every computed answer, keyed like the cases' own.
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, "..", "..");
const words = process.argv.slice(2);
const outAt = words.indexOf("--out");
const out = outAt < 0 ? undefined : words.splice(outAt, 2)[1];
const file = words[0] ?? join(root, "tests", "support", "reference-cases.json");

/** Beside the packages, so that those that are left outside are found. */
const bundle = join(root, "node_modules", ".cases.mjs");
await build({
  stdin: { contents: 'export * from "./families.ts"; export * from "./deviation.ts";', resolveDir: here },
  bundle: true,
  platform: "node",
  format: "esm",
  packages: "external",
  outfile: bundle,
});
const { families, deviationOf } = await import(pathToFileURL(bundle).href);
rmSync(bundle);

const cases = JSON.parse(readFileSync(file, "utf8"));
const answers = {};
let most = 0;
for (const [name, solve] of Object.entries(families)) {
  for (const one of cases[name] ?? []) {
    const computed = solve(one.in);
    answers[one.id] = computed;
    if (one.out === undefined) continue;
    const { worst, where, count } = deviationOf(computed, one.out);
    most = Math.max(most, worst);
    console.log(`${name} ${one.id}: ${count} figures, worst deviation ${worst.toExponential(1)} at ${where}`);
  }
}
if (out !== undefined) writeFileSync(out, `${JSON.stringify(answers, null, 1)}\n`);
console.log(`${Object.keys(answers).length} cases, worst deviation ${most.toExponential(1)}`);
