import { describe, expect, it } from "vitest";
import { buildFrame, type GuardFrameInput, placeOn, unitCases } from "../../src/mechanics/guard-frame-build.ts";

const post = (station: number) => ({ station, E: 11_000, A: 7900, I: 5e6, base: "fixed" as const });
const side: GuardFrameInput = {
  posts: [post(0), post(1500), post(3000)],
  height: 915,
  topRail: { EA: 5e7, EI: 7e9, joint: "pinned" },
  bottomRail: { EA: 3e7, EI: 5e9, joint: "pinned", height: 80 },
  blocks: [2250, 750, 1000],
  cables: [{ left: 0, right: 2, height: 500 }],
  loads: [{ post: 1, height: 50 }],
};

describe("buildFrame", () => {
  it("three posts, two rails and three blocks: 12 nodes and 13 members, each block a prop of the bottom rail", () => {
    const { frame, posts, topRail, bottomRail } = buildFrame(side);
    expect(frame.nodes).toHaveLength(12);
    expect(frame.members).toHaveLength(13);
    expect(posts.map(({ pieces }) => pieces.length)).toEqual([2, 2, 2]);
    expect(topRail.map((pieces) => pieces.length)).toEqual([1, 1]);
    expect(bottomRail.map((pieces) => pieces.length)).toEqual([3, 2]);
    expect(frame.nodes.filter(({ support }) => support?.y === "fixed" && support.x === undefined).map(({ x }) => x)).toEqual([
      750, 1000, 2250,
    ]);
    // Hinged at the posts alone.
    expect(bottomRail[0]?.map((member) => [frame.members[member]?.hingedFrom, frame.members[member]?.hingedTo])).toEqual([
      [true, false],
      [false, false],
      [false, true],
    ]);
  });

  it("the top rail runs over the posts: pinned hinges the posts, rigid nothing, without bending stiffness itself", () => {
    const hinges = (input: GuardFrameInput) => {
      const { frame, posts, topRail } = buildFrame(input);
      const top = posts[1]?.pieces.at(-1)?.member ?? -1;
      const rail = topRail[0]?.[0] ?? -1;
      return [frame.members[top]?.hingedTo, frame.members[rail]?.hingedFrom, frame.members[rail]?.hingedTo];
    };
    expect(hinges(side)).toEqual([true, false, false]);
    expect(hinges({ ...side, topRail: { EA: 5e7, EI: 7e9, joint: "rigid" } })).toEqual([false, false, false]);
    expect(hinges({ ...side, topRail: { EA: 5e7, EI: 0, joint: "pinned" } })).toEqual([true, true, true]);
  });

  it("refuses posts out of order, a bottom rail off the posts, and blocks where no rail is", () => {
    expect(() => buildFrame({ ...side, posts: [post(0), post(0)] })).toThrow("post 1 does not stand to the right of post 0");
    for (const height of [0, 915])
      expect(() => buildFrame({ ...side, bottomRail: { EA: 1, EI: 0, joint: "pinned", height } })).toThrow("bottom rail");
    for (const blocks of [[-5], [3000], [1500], [3500]]) expect(() => buildFrame({ ...side, blocks })).toThrow("the block at");
    expect(() => buildFrame({ ...side, bottomRail: null })).toThrow("the block at 2250 mm");
    const open = { EA: 3e7, EI: 5e9, joint: "pinned", height: 80, openBays: [1] } as const;
    expect(() => buildFrame({ ...side, bottomRail: open })).toThrow("the block at 2250 mm");
    expect(buildFrame({ ...side, bottomRail: open, blocks: [750] }).bottomRail.map((pieces) => pieces.length)).toEqual([2, 0]);
  });
});

describe("placeOn", () => {
  const built = buildFrame(side);

  it("50 mm is on the piece under the bottom rail, 500 mm 420 mm up the piece over it", () => {
    const [low, high] = built.posts[1]?.pieces ?? [];
    expect(placeOn(built, 1, 50)).toEqual({ member: low?.member, at: 50 });
    expect(placeOn(built, 1, 500)).toEqual({ member: high?.member, at: 420 });
  });

  it("refuses heights off the post", () => {
    expect(() => placeOn(built, 0, 915.1)).toThrow(RangeError);
    expect(() => placeOn(built, 0, Number.NaN)).toThrow(RangeError);
    expect(() => placeOn(built, 0, -1)).toThrow(RangeError);
    expect(() => placeOn(built, 7, 0)).toThrow("no post 7");
  });
});

describe("unitCases", () => {
  const built = buildFrame(side);

  it("one case for the cable, one for the load, one for the deck, one for the rails", () => {
    const cases = unitCases(built, side);
    expect(cases.map(({ onMembers = [] }) => onMembers.map(({ x }) => x))).toEqual([[1, -1], [1], [], []]);
    expect(cases[2]?.settlements?.map(({ x }) => x)).toEqual([0, 1500, 3000]);
    expect(cases[3]?.strains).toHaveLength(7);
    expect(unitCases(built, { ...side, cables: [], loads: [] })).toHaveLength(2);
  });

  it("refuses a cable that runs from right to left, or from a post to itself", () => {
    for (const ends of [
      { left: 2, right: 0 },
      { left: 1, right: 1 },
    ]) {
      expect(() => unitCases(built, { ...side, cables: [{ ...ends, height: 500 }] })).toThrow("not from left to right");
    }
  });
});
