#!/usr/bin/env node
// Where does the program start? Here; it is the only place that sets the exit code.
import { realEffects } from "./effects.ts";
import { run } from "./run.ts";

process.exitCode = await run(process.argv.slice(2), realEffects);
