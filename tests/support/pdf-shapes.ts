// Which lines and closed curves stand on a page of a PDF, and where? Its operators are followed by a reader that has nothing to do with the writer.
import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

/** In mm from the lower left corner of the page. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

export interface PdfLine {
  readonly from: Place;
  readonly to: Place;
  readonly width_mm: number;
}

/** A closed curve without a straight part: circle or ellipse, by the box around it. */
export interface PdfRound {
  readonly centre: Place;
  readonly across: number;
  readonly up: number;
}

export interface PdfShapes {
  readonly lines: readonly PdfLine[];
  readonly rounds: readonly PdfRound[];
}

type Matrix = readonly [number, number, number, number, number, number];
const MM_PER_POINT = 25.4 / 72;
const identity: Matrix = [1, 0, 0, 1, 0, 0];
const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[1] * n[2],
  m[0] * n[1] + m[1] * n[3],
  m[2] * n[0] + m[3] * n[2],
  m[2] * n[1] + m[3] * n[3],
  m[4] * n[0] + m[5] * n[2] + n[4],
  m[4] * n[1] + m[5] * n[3] + n[5],
];

/** How many numbers follow each code of a path. */
const MOVE = 0;
const LINE = 1;
const CURVE = 2;
const CLOSE = 4;

export const readPdfShapes = async (bytes: Uint8Array): Promise<readonly PdfShapes[]> => {
  const document = await getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 }).promise;
  const pages: PdfShapes[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const { fnArray, argsArray } = await (await document.getPage(number)).getOperatorList();
    pages.push(follow(fnArray, argsArray as readonly unknown[][]));
  }
  await document.destroy();
  return pages;
};

function follow(operators: readonly number[], operands: readonly unknown[][]): PdfShapes {
  const lines: PdfLine[] = [];
  const rounds: PdfRound[] = [];
  const stack: { readonly matrix: Matrix; readonly width: number }[] = [];
  let matrix = identity;
  let width = 1;
  for (const [index, operator] of operators.entries()) {
    const given = operands[index] ?? [];
    if (operator === OPS.save) stack.push({ matrix, width });
    else if (operator === OPS.restore) ({ matrix, width } = stack.pop() ?? { matrix: identity, width: 1 });
    else if (operator === OPS.transform) matrix = times(given as unknown as Matrix, matrix);
    else if (operator === OPS.setLineWidth) width = Number(given[0]);
    else if (operator === OPS.setGState) {
      for (const [key, value] of given[0] as readonly (readonly [string, unknown])[]) if (key === "LW") width = Number(value);
    } else if (operator === OPS.constructPath && (given[0] === OPS.stroke || given[0] === OPS.closeStroke)) {
      const [data] = given[1] as readonly (ArrayLike<number> | null)[];
      if (data !== null && data !== undefined)
        addPath(Array.from(data), matrix, { lines, rounds, width_mm: width * Math.hypot(matrix[0], matrix[1]) * MM_PER_POINT });
    }
  }
  return { lines, rounds };
}

interface Found {
  readonly lines: PdfLine[];
  readonly rounds: PdfRound[];
  readonly width_mm: number;
}

function addPath(data: readonly number[], m: Matrix, { lines, rounds, width_mm }: Found): void {
  const place = (x: number, y: number): Place => ({
    x: (x * m[0] + y * m[2] + m[4]) * MM_PER_POINT,
    y: (x * m[1] + y * m[3] + m[5]) * MM_PER_POINT,
  });
  let at: Place = { x: 0, y: 0 };
  let curve: Place[] = [];
  const endCurve = (): void => {
    const first = curve[0];
    const closes = first !== undefined && Math.hypot(first.x - at.x, first.y - at.y) < 0.01;
    if (curve.length >= 5 && closes) {
      const [xs, ys] = [curve.map(({ x }) => x), curve.map(({ y }) => y)];
      const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
      rounds.push({ centre: { x: (left + right) / 2, y: (low + high) / 2 }, across: right - left, up: high - low });
    }
    curve = [];
  };
  for (let index = 0; index < data.length; ) {
    const code = data[index];
    const number = (offset: number): number => data[index + offset] ?? Number.NaN;
    if (code === MOVE) {
      endCurve();
      at = place(number(1), number(2));
      index += 3;
    } else if (code === LINE) {
      endCurve();
      const to = place(number(1), number(2));
      lines.push({ from: at, to, width_mm });
      at = to;
      index += 3;
    } else if (code === CURVE) {
      if (curve.length === 0) curve.push(at);
      at = place(number(5), number(6));
      curve.push(at);
      index += 7;
    } else if (code === CLOSE) index += 1;
    else throw new Error(`a path has the code ${code}, which this reader does not know`);
  }
  endCurve();
}
