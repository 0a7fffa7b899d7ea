// Where does each text of a finished SVG stand? Read from the markup and measured with the font itself, not with the drawing room's table.
import { openFont } from "./font-table.ts";

export interface TextOnPaper {
  readonly text: string;
  readonly size: number;
  readonly corners: readonly { readonly x: number; readonly y: number }[];
}

const fonts = { 400: openFont(400), 700: openFont(700) };

/** Every <text> with the four corners of its ink: widths from the advances, heights from the outlines of its letters. */
export function textsOf(svg: string): readonly TextOnPaper[] {
  return [...svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)].map(([, attributes = "", content = ""]) => {
    const of = (name: string): string | undefined => new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1];
    const text = plainText(content);
    const size = Number(of("font-size"));
    const font = fonts[of("font-weight") === "700" ? 700 : 400];
    const glyphs = [...text].map((letter) => font.glyphForCodePoint(letter.codePointAt(0) ?? 0));
    const em = size / font.unitsPerEm;
    const width = glyphs.reduce((sum, glyph) => sum + glyph.advanceWidth, 0) * em;
    const anchor = of("text-anchor") ?? "start";
    const [x, y] = [Number(of("x")), Number(of("y"))];
    const left = x - (anchor === "start" ? 0 : anchor === "middle" ? width / 2 : width);
    const top = y - Math.max(...glyphs.map(({ bbox }) => bbox.maxY)) * em;
    const bottom = y - Math.min(...glyphs.map(({ bbox }) => bbox.minY)) * em;
    const [turn = 0, aboutX = 0, aboutY = 0] = (/^rotate\((.*)\)$/.exec(of("transform") ?? "")?.[1] ?? "").split(" ").map(Number);
    const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
    const corners = [
      [left, top],
      [left + width, top],
      [left + width, bottom],
      [left, bottom],
    ].map(([px = 0, py = 0]) => ({
      x: aboutX + (px - aboutX) * cos - (py - aboutY) * sin,
      y: aboutY + (px - aboutX) * sin + (py - aboutY) * cos,
    }));
    return { text, size, corners };
  });
}

export function viewBoxOf(svg: string): { readonly left: number; readonly top: number; readonly width: number; readonly height: number } {
  const [left = Number.NaN, top = Number.NaN, width = Number.NaN, height = Number.NaN] = (/viewBox="([^"]*)"/.exec(svg)?.[1] ?? "")
    .split(" ")
    .map(Number);
  return { left, top, width, height };
}

const names: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"' };

const plainText = (text: string): string =>
  text.replace(/&(?:#(\d+)|(\w+));/g, (_, code: string | undefined, name: string) =>
    code === undefined ? (names[name] ?? "?") : String.fromCodePoint(Number(code)),
  );
