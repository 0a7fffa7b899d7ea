// How near is near enough? Every tolerance of the program by name, with its reason.

/** Two computed points are one, two computed lengths are equal: far below any tool, far above the dust of doubles at 100 m. */
export const SAME_mm = 1e-6;

/** The finest mark used on site, 1/16 in: set-out and drilling cannot be asked for more. */
export const TAPE_mm = 25.4 / 16;

/** How far apart the ends of an outline that should close may lie: a tape read twice to 1/4 in. */
export const CLOSURE_mm = 25.4 / 4;

/** Share of a value within which it counts as a whole multiple of a step: what a handful of operations on doubles can spoil. */
export const DUST_share = 1e-9;

/** Two directions are one: 1 mm in 1 km. */
export const SAME_rad = 1e-6;

/** Share of all forces on a frame by which their sum may miss zero: a wrong equation misses by far more. */
export const EQUILIBRIUM_share = 1e-6;

/** Share of the largest product in a sum of doubles that may stay behind as dust: some thousand roundings. */
export const SUM_DUST_share = 1e-12;

/** A frame whose resistance to some movement falls to this share of its parts' own can move freely: far below a flimsy frame, far above dust. */
export const MECHANISM_share = 1e-11;
