export function serveFolder(folder: string): Promise<{ readonly address: string; readonly close: () => void }>;
