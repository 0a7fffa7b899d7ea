// Which days of the year pull a cable hardest and slacken it most, and what does the hardest add?
import { climateNamed } from "./climate-rules.ts";
import { derived } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";

/** Which of the two days that bound the site's range it is. */
const dayRule = (field: "hardest" | "slackest", what: string, why: (isCold: boolean) => string): Rule =>
  rule(`climate.*.${field}.temperature`, what, (reader, [run = ""]) => {
    const isCold = climateNamed(reader, run)[field].temperature === reader.plan.job.site.coldest.value;
    return {
      formula: "t",
      inputs: [reader.at("t", isCold ? "coldest day" : "warmest day", `job.site.${isCold ? "coldest" : "warmest"}`)],
      origin: derived(why(isCold)),
    };
  });

/** The days that pull a run hardest and slacken it most. */
export const seasonRules: readonly Rule[] = [
  rule(
    "climate.*.hardest.each.*",
    "What the hardest day of the year adds to one cable of run {}; {} counts from the lowest",
    ({ at }, [run, key]) => ({
      formula: "max(0, 0 - c, 0 - h)",
      inputs: [
        at("c", "what the coldest day takes from it", `climate.${run}.cold.each${key}`),
        at("h", "what the warmest day takes from it", `climate.${run}.heat.each${key}`),
      ],
      origin: derived("the greater gain of both"),
    }),
  ),
  rule(
    "climate.*.hardest.worst",
    "What the hardest day of the year adds to the cable of run {} that gains most",
    ({ all, plan }, [run]) => ({
      formula: "max(g)",
      inputs: [
        all(
          "g",
          "what each cable gains, from the lowest",
          plan.courses.map((_, nth) => `climate.${run}.hardest.each[${nth}]`),
        ),
      ],
      origin: derived("the cable that gains most decides"),
    }),
  ),
  dayRule("hardest", "Temperature of the day that pulls run {} hardest", (isCold) =>
    isCold ? "no cable gains more on the warmest day" : "its cables gain more than on the coldest day",
  ),
  dayRule(
    "slackest",
    "Temperature of the day that slackens run {} most",
    (isCold) => `with drying and bedding-in no cable loses more on the ${isCold ? "warmest" : "coldest"} day`,
  ),
];
