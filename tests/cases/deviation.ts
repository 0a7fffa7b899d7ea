// How far are computed figures from those of a reference file?

export interface Deviation {
  /** Difference over the larger of both figures and the largest of their list. */
  readonly worst: number;
  readonly where: string;
  /** Figures compared. */
  readonly count: number;
}

interface Figure {
  readonly path: string;
  readonly computed: number;
  readonly expected: number;
  readonly scale: number;
}

const NOTHING: Deviation = { worst: 0, where: "-", count: 0 };

/** Every number that both have under the same keys. */
export function deviationOf(computed: unknown, expected: unknown): Deviation {
  return figuresOf({ computed, expected, path: "", scale: 0 }).reduce((most, figure): Deviation => {
    const size = Math.max(Math.abs(figure.expected), Math.abs(figure.computed), figure.scale);
    const off = size === 0 ? 0 : Math.abs(figure.computed - figure.expected) / size;
    const count = most.count + 1;
    return off > most.worst ? { worst: off, where: figure.path, count } : { worst: most.worst, where: most.where, count };
  }, NOTHING);
}

interface Pair {
  readonly computed: unknown;
  readonly expected: unknown;
  readonly path: string;
  readonly scale: number;
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === "object" && value !== null;

function figuresOf({ computed, expected, path, scale }: Pair): readonly Figure[] {
  if (typeof computed === "number" && typeof expected === "number") return [{ path, computed, expected, scale }];
  if (!isObject(computed) || !isObject(expected)) return [];
  const numbers = Array.isArray(expected) ? expected.flat(2).filter((one): one is number => typeof one === "number") : [];
  const largest = Math.max(scale, ...numbers.map(Math.abs));
  return Object.keys(computed).flatMap((key) =>
    key in expected
      ? figuresOf({ computed: computed[key], expected: expected[key], path: path === "" ? key : `${path}.${key}`, scale: largest })
      : [],
  );
}
