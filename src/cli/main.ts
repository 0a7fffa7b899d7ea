#!/usr/bin/env node
// Where does the program start? Here; it is the only place that sets the exit code.
import { realEffects } from "./effects.ts";
import { run } from "./run.ts";

// A reader that has seen enough (`| head`) closes the pipe: what it no longer reads is no fault.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
});

process.exitCode = await run(process.argv.slice(2), realEffects);
