// Which packages have no types of their own? Only what the tests use of them.
declare module "fontkit" {
  export interface OpenFont {
    readonly unitsPerEm: number;
    readonly characterSet: readonly number[];
    glyphForCodePoint(code: number): { readonly advanceWidth: number; readonly bbox: { readonly minY: number; readonly maxY: number } };
  }
  export function openSync(path: string): OpenFont;
}
