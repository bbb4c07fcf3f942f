export const launchArguments: readonly string[];
export function findChromium(): string | undefined;
export function ensureChromium(say?: (line: string) => void): string;
