// How far do posts and rails move under the cables and under the code's load, and are the walls of tubes thick enough?
import type { Job } from "../job/job.ts";
import { cantilever, simpleBeam, simpleBeamEven } from "../mechanics/beam.ts";
import { wallCheck } from "../mechanics/metal-checks.ts";
import { deflectionCheck, type Part } from "../mechanics/strength-check.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import { sectionOfPost } from "./as-found.ts";
import { type GuardLoads, pushNames, type TopLoad } from "./frame-check-guard.ts";
import type { LoadedBay, LoadedPost } from "./frame-check-loads.ts";
import { memberName } from "./frame-check-rail.ts";
import { CABLES_ALONE, limitRow, worstOf } from "./frame-check-row.ts";
import { type MetalStrength, ruleOf, type Strength } from "./frame-check-strength.ts";
import { baseStiffness, postMember, railMember } from "./frame-members.ts";
import type { FrameCheck } from "./frame-plan.ts";
import { movementLimit } from "./movement.ts";

/** The post that the cables move most, at a course or at its top. */
export function movementRows(posts: readonly LoadedPost[], job: Job): readonly FrameCheck[] {
  const limit = movementLimit(job);
  const places = posts.flatMap(({ post, places: all }) => all.map((place) => ({ post, place })));
  const worst = worstOf(places, ({ place }) => Math.abs(place.movement));
  if (worst === undefined) return [];
  return [
    limitRow(
      {
        id: `movement-${worst.post.id}`,
        name: "movement of posts by the cables",
        member: worst.post.id,
        height: worst.place.height,
        loads: CABLES_ALONE,
        advice: "Use stiffer posts, bases or a stiffer top rail, or a lower tension with more spacers.",
      },
      {
        ...limit,
        check: deflectionCheck({ deflection: worst.place.movement, limit: limit.value }),
        unit: "mm",
        formula: "movement <= share of the guard's height",
        factors: [],
      },
    ),
  ];
}

interface Deflected {
  readonly deflection: Mm;
  readonly load: TopLoad;
  readonly parts: readonly Part[];
}

/** Posts square to the guard: bending of the post and turn of its base, P h^3 / (3 E I) + P h^2 / k. */
export function postDeflectionRows(posts: readonly LoadedPost[], { top }: GuardLoads, height: Mm, job: Job): readonly FrameCheck[] {
  const base = baseStiffness(job).value;
  const moved = (id: string, load: TopLoad, force: Newton): Deflected => {
    const { modulus, section } = postMember(job, sectionOfPost(job, id));
    const EI = modulus.value * section.y.inertia_mm4;
    const bent = cantilever({ length: height, load: force, at: height, EI }).deflection;
    const turned = base === "fixed" ? 0 : (force * height ** 2) / base;
    return {
      deflection: bent + turned,
      load,
      parts: [
        { name: "P", value: force, unit: "N" },
        { name: "h", value: height, unit: "mm" },
        { name: "by bending of the post", value: bent, unit: "mm" },
        { name: "by turn of its base", value: turned, unit: "mm" },
      ],
    };
  };
  const all = posts.flatMap((one) =>
    top
      .filter(({ pushes }) => pushes.includes("square"))
      .map((load) => ({
        one,
        ...moved(one.post.id, load, load.on(one.tributary)),
      })),
  );
  const worst = worstOf(all, ({ deflection }) => deflection);
  if (worst === undefined) return [];
  const { id } = worst.one.post;
  return [
    deflectionRow(worst, { length: height, formula: "P h^3 / (3 E I) + P h^2 / k <= share of h" }, job, {
      id: `post-deflection-${id}`,
      name: "deflection of posts by the guard load",
      member: id,
      height,
      advice: "Use a stiffer post or a stiffer base.",
    }),
  ];
}

/** The top rail at mid-span, as a beam on two supports. */
export function railDeflectionRows(bays: readonly LoadedBay[], { top }: GuardLoads, job: Job): readonly FrameCheck[] {
  const { modulus, section } = railMember(job.frame.topRail, job);
  const all = bays.flatMap((bay) =>
    top.flatMap((load) =>
      load.pushes.flatMap((push) => {
        if (push === "along the rail") return [];
        const EI = modulus.value * section[push === "square" ? "x" : "y"].inertia_mm4;
        const { length } = bay;
        const force = load.on(length);
        const beam = load.isLine
          ? simpleBeamEven({ length, load_NPerMm: force / length, EI })
          : simpleBeam({ length, load: force, at: length / 2, EI });
        const parts: readonly Part[] = [
          { name: load.isLine ? "w L" : "P", value: force, unit: "N" },
          { name: "L", value: length, unit: "mm" },
        ];
        return [{ bay, push, load, deflection: beam.deflection, parts }];
      }),
    ),
  );
  const worst = worstOf(all, ({ deflection, bay }) => deflection / bay.length);
  if (worst === undefined) return [];
  const formula = `${worst.load.isLine ? "5 w L^4 / (384 E I)" : "P L^3 / (48 E I)"} <= share of L`;
  return [
    deflectionRow(worst, { length: worst.bay.length, formula }, job, {
      id: `top-rail-deflection-${worst.bay.sideId}`,
      name: "deflection of the top rail by the guard load",
      member: memberName("top rail", worst.bay),
      height: null,
      advice: "Set the posts closer together, or use a larger top rail.",
    }),
  ];
}

function deflectionRow(
  { deflection, load, parts, push = "square" }: Deflected & { readonly push?: TopLoad["pushes"][number] },
  { length, formula }: { readonly length: Mm; readonly formula: string },
  job: Job,
  where: Pick<FrameCheck, "id" | "name" | "member" | "height" | "advice">,
): FrameCheck {
  const { deflectionShare_max } = job.limits;
  const check = deflectionCheck({ deflection, limit: deflectionShare_max.value * length });
  return limitRow(
    { ...where, loads: load.text(pushNames[push]) },
    { ...deflectionShare_max, check: { ...check, parts }, unit: "mm", formula, factors: [] },
  );
}

export interface Walled {
  readonly id: string;
  readonly name: string;
  readonly strength: Strength | null;
}

/** Walls of tubes reach yield without buckling; one row for each kind of member. */
export const wallRows = (members: readonly Walled[]): readonly FrameCheck[] =>
  members.flatMap(({ id, name, strength }) =>
    strength?.kind === "metal" && strength.wall !== null ? [wallRow(id, name, strength, strength.wall)] : [],
  );

function wallRow(id: string, name: string, strength: MetalStrength, thickness: Mm): FrameCheck {
  const { section, alloy, basis } = strength;
  const check = wallCheck({
    shape: "flat",
    width: Math.max(section.x.size, section.y.size) - 2 * thickness,
    thickness,
    modulus: alloy.modulus.value,
    yieldStress: alloy.yieldStress.value,
    limit: basis.flatWall_max.value,
  });
  return limitRow(
    {
      id: `wall-${id}`,
      name: `wall of ${name}`,
      member: name,
      height: null,
      loads: "any load",
      advice: `Use a thicker wall for the ${name}.`,
    },
    {
      ...ruleOf(strength, { wood: "", metal: "slenderness of walls" }),
      check,
      unit: "1",
      formula: "b / t <= k sqrt(E / Fy)",
      factors: [
        { ...basis.flatWall_max, name: "k" },
        { ...alloy.modulus, name: "E" },
        { ...alloy.yieldStress, name: "Fy" },
      ],
    },
  );
}
