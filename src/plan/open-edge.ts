// What protects those who work at the edge, and those who pass it, while no guard stands there?
import type { Job } from "../job/job.ts";
import type { Mm } from "../units/quantity.ts";

/** From here on an open edge asks for fall protection at work: 6 ft, 29 CFR 1926.501(b)(1). */
const FALL_mm: Mm = 1828.8;

/** Every guard stands at a drop: below the height of the rule the edge is closed off all the same. */
export const edgeProtection = (job: Job): "fall protection" | "temporary barrier" =>
  job.code.drop >= FALL_mm ? "fall protection" : "temporary barrier";
