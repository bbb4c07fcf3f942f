export function serveFolder(folder: string): Promise<{ readonly address: string; close(): void }>;
