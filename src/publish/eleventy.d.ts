// The part of Eleventy's interface that the site build uses; the package brings no types of its own.
declare module "@11ty/eleventy" {
  export interface EleventyConfig {
    readonly globalData: Readonly<Record<string, unknown>>;
    addGlobalData(name: string, value: unknown): void;
    addExtension(extension: string, options: Readonly<Record<string, unknown>>): void;
    setUseGitIgnore(use: boolean): void;
    readonly ignores: { add(glob: string): void; delete(glob: string): void };
  }
  export interface Rendered {
    readonly url: string;
    readonly inputPath: string;
    readonly outputPath: string;
    readonly content: string;
  }
  export default class Eleventy {
    constructor(
      input: string,
      output: string,
      options: { quietMode?: boolean; configPath?: string; source?: string; config?: (config: EleventyConfig) => void },
    );
    toJSON(): Promise<readonly Rendered[]>;
  }
}
