// Which packages come without types? Those that this room uses, with just what it uses.
declare module "@11ty/eleventy" {
  export interface EleventyConfig {
    readonly ignores: Set<string>;
    setUseGitIgnore(use: boolean): void;
    setLibrary(name: string, library: unknown): void;
    addTemplate(path: string, content: string, data: Readonly<Record<string, unknown>>): void;
    addTransform(name: string, transform: (this: { page: { url: string } }, content: string) => string): void;
    addGlobalData(name: string, value: unknown): void;
    setIncludesDirectory(folder: string): void;
    setLayoutsDirectory(folder: string): void;
    setDataDirectory(folder: string): void;
  }
  export class Eleventy {
    constructor(
      input: string,
      output: string,
      options: { quietMode?: boolean; configPath?: string | null; config?: (config: EleventyConfig) => void; runMode?: string },
    );
    init(): Promise<void>;
    disableLogger(): void;
    setDryRun(dry: boolean): void;
    write(): Promise<unknown>;
  }
}
