// How does a large script load in half of the time? Its compiled form is kept beside it.
// Plain JavaScript: it is bundled into the scripts themselves. What another release of Node has compiled is ignored by Node.
import { existsSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname } from "node:path";
import { setFlagsFromString } from "node:v8";
import vm from "node:vm";

// Most functions are called a few times only, even where a thousand jobs are built: compiling them anew, with all of the engine's
// art, took cores that the browser needs (a start from cold: 5 % of its time) or other jobs do. What is kept of a script holds
// only for the pace at which it was compiled, so this is set before any is loaded.
setFlagsFromString("--interrupt-budget=700000");

/** The exports of a script in the old module format; it takes the packages that are given instead of finding its own copy. */
export const loadCached = (path, given = {}) => {
  const find = createRequire(path);
  const compiled = `${path}.compiled`;
  const script = new vm.Script(`(function(exports,require,module,__filename,__dirname){${readFileSync(path, "utf8")}\n})`, {
    filename: path,
    cachedData: existsSync(compiled) ? readFileSync(compiled) : undefined,
    importModuleDynamically: vm.constants?.USE_MAIN_CONTEXT_DEFAULT_LOADER,
  });
  if (process.env.REEVEBOOK_KEEP_COMPILED === "1") process.once("exit", () => keep(script, compiled));
  const module = { exports: {} };
  script.runInThisContext()(module.exports, (name) => given[name] ?? find(name), module, path, dirname(path));
  return module.exports;
};

/** Holds every function that was called until now. */
const keep = (script, compiled) => {
  writeFileSync(`${compiled}.part`, script.createCachedData());
  renameSync(`${compiled}.part`, compiled);
};
