// Which frame is known in closed form and looks like a guard? Two cantilever posts without a rail.

/**
 * F of cables between two equal cantilevers: the sum of both posts' a^2 (3 b - a) / (6 EI), a the lower and b the higher of the two
 * heights (beam tables: cantilever with a load on it, deflection at another place).
 */
export const cantileverFlexibility = (heights: readonly number[], EI_Nmm2: number): readonly (readonly number[])[] =>
  heights.map((one) =>
    heights.map((other) => {
      const [a, b] = [Math.min(one, other), Math.max(one, other)];
      return (2 * a ** 2 * (3 * b - a)) / (6 * EI_Nmm2);
    }),
  );

/** 3.5 x 3.5 in of 1.6 million psi, in N mm2. */
export const POST_EI_Nmm2 = (88.9 ** 4 / 12) * 11_031.6;

export const evenHeights = (count: number, spacing = 79.375): readonly number[] =>
  Array.from({ length: count }, (_, k) => 82.55 + spacing * k);
