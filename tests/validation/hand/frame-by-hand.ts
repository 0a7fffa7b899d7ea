// What does a plane frame do under its cables, solved here in the longest way: every node free, one large system, Gauss elimination?
// Written for the checks beside it from the stiffness of a Timoshenko beam as textbooks print it (e.g. Przemieniecki, Theory of Matrix
// Structural Analysis, 1968, section 5.6; the form from memory); it shares no code with the program.

export interface HandPost {
  readonly x: number;
  readonly EA: number;
  readonly EI: number;
  readonly GA: number;
  readonly base: number;
}

export interface HandFrame {
  readonly posts: readonly HandPost[];
  readonly topHeight: number;
  readonly top: { readonly EA: number; readonly EI: number };
  readonly bottom: { readonly height: number; readonly EA: number; readonly EI: number } | null;
  /** Cables run from the first post to the last. */
  readonly heights: readonly number[];
}

type Matrix = number[][];

const zeros = (rows: number, columns: number): Matrix => Array.from({ length: rows }, () => Array.from({ length: columns }, () => 0));

/** Solves A X = B in place, with the largest pivot of each column. */
export function gauss(A: Matrix, B: Matrix): Matrix {
  const n = A.length;
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(A[i]?.[k] ?? 0) > Math.abs(A[pivot]?.[k] ?? 0)) pivot = i;
    [A[k], A[pivot]] = [A[pivot] ?? [], A[k] ?? []];
    [B[k], B[pivot]] = [B[pivot] ?? [], B[k] ?? []];
    const [top, right] = [A[k] ?? [], B[k] ?? []];
    for (let i = 0; i < n; i++) {
      const [row, side] = [A[i] ?? [], B[i] ?? []];
      if (i === k || row[k] === 0) continue;
      const factor = (row[k] ?? 0) / (top[k] ?? 1);
      for (let j = k; j < n; j++) row[j] = (row[j] ?? 0) - factor * (top[j] ?? 0);
      for (let j = 0; j < side.length; j++) side[j] = (side[j] ?? 0) - factor * (right[j] ?? 0);
    }
  }
  return B.map((row, k) => row.map((value) => value / (A[k]?.[k] ?? 1)));
}

/** Closing between the anchors of cable i when cable j pulls with 1 N [mm/N]. */
export function closingByHand(frame: HandFrame): Matrix {
  const { posts, topHeight, top, bottom, heights } = frame;
  const levels = [...new Set([0, ...heights, ...(bottom === null ? [] : [bottom.height]), topHeight])].sort((a, b) => a - b);
  // Each post has its own rotation at the top; the rail has one of its own there, since the joint is a hinge.
  const perPost = 3 * levels.length + 1;
  const size = perPost * posts.length;
  const dof = (post: number, level: number, axis: 0 | 1 | 2): number => post * perPost + 3 * level + axis;
  const railTurn = (post: number): number => post * perPost + 3 * levels.length;
  const K = zeros(size, size);
  const add = (places: readonly number[], k: Matrix): void => {
    places.forEach((row, i) => {
      places.forEach((column, j) => {
        const line = K[row] ?? [];
        line[column] = (line[column] ?? 0) + (k[i]?.[j] ?? 0);
      });
    });
  };
  const at = (height: number): number => levels.indexOf(height);
  posts.forEach((post, p) => {
    levels.slice(1).forEach((high, index) => {
      const places = [index, index + 1].flatMap((level) => ([0, 1, 2] as const).map((axis) => dof(p, level, axis)));
      add(places, upright(high - (levels[index] ?? 0), post));
    });
    const turn = dof(p, 0, 2);
    const line = K[turn] ?? [];
    line[turn] = (line[turn] ?? 0) + post.base;
    const next = posts[p + 1];
    if (next === undefined) return;
    const length = next.x - post.x;
    const [a, b] = [at(topHeight), at(topHeight)];
    add([dof(p, a, 0), dof(p, a, 1), railTurn(p), dof(p + 1, b, 0), dof(p + 1, b, 1), railTurn(p + 1)], level(length, top));
    // In pieces from post to post, hinged at both ends: a bar.
    if (bottom !== null) {
      const k = bottom.EA / length;
      add(
        [dof(p, at(bottom.height), 0), dof(p + 1, at(bottom.height), 0)],
        [
          [k, -k],
          [-k, k],
        ],
      );
    }
  });
  // The feet neither slide nor sink.
  posts.forEach((_, p) => {
    for (const place of [dof(p, 0, 0), dof(p, 0, 1)]) {
      for (let j = 0; j < size; j++) (K[place] ?? [])[j] = 0;
      for (let i = 0; i < size; i++) (K[i] ?? [])[place] = 0;
      (K[place] ?? [])[place] = 1;
    }
  });
  const B = zeros(size, heights.length);
  heights.forEach((height, cable) => {
    (B[dof(0, at(height), 0)] ?? [])[cable] = 1;
    (B[dof(posts.length - 1, at(height), 0)] ?? [])[cable] = -1;
  });
  const U = gauss(K, B);
  return heights.map((height) =>
    heights.map((_, j) => (U[dof(0, at(height), 0)]?.[j] ?? 0) - (U[dof(posts.length - 1, at(height), 0)]?.[j] ?? 0)),
  );
}

/** A rail, lying along x: u, v, turn at each end. */
function level(L: number, { EA, EI }: { readonly EA: number; readonly EI: number }): Matrix {
  const [a, b, c, d] = [EA / L, (12 * EI) / L ** 3, (6 * EI) / L ** 2, EI / L];
  return [
    [a, 0, 0, -a, 0, 0],
    [0, b, c, 0, -b, c],
    [0, c, 4 * d, 0, -c, 2 * d],
    [-a, 0, 0, a, 0, 0],
    [0, -b, -c, 0, b, -c],
    [0, c, 2 * d, 0, -c, 4 * d],
  ];
}

/** A piece of a post, standing: the same turned by a right angle, with shear: phi = 12 EI / (GA L^2). */
function upright(L: number, { EA, EI, GA }: HandPost): Matrix {
  const phi = (12 * EI) / (GA * L ** 2);
  const [a, b, c] = [EA / L, (12 * EI) / ((1 + phi) * L ** 3), (6 * EI) / ((1 + phi) * L ** 2)];
  const [near, far] = [((4 + phi) * EI) / ((1 + phi) * L), ((2 - phi) * EI) / ((1 + phi) * L)];
  return [
    [b, 0, -c, -b, 0, -c],
    [0, a, 0, 0, -a, 0],
    [-c, 0, near, c, 0, far],
    [-b, 0, c, b, 0, c],
    [0, -a, 0, 0, a, 0],
    [-c, 0, far, c, 0, near],
  ];
}
