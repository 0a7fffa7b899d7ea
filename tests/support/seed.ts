// Which random cases do the law tests draw? The same on every run, so that a run can be repeated and what it covers does not drift.
import fc from "fast-check";

/** Draw others with REEVEBOOK_SEED=number. */
const seed = Number(process.env["REEVEBOOK_SEED"] ?? 20_261_125);

fc.configureGlobal({ ...fc.readConfigureGlobal(), seed });
