// A small file server for the browser tests and the contact sheet: one folder, on a free port, nothing outside it.
import { createReadStream, existsSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";

const types = {
  ".html": "text/html; charset=utf-8",
  ".css": "text/css",
  ".js": "text/javascript",
  ".json": "application/json",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
  ".atom": "application/atom+xml",
  ".csv": "text/csv",
};

/** Serves a folder; gives its address and a way to end it. */
export function serveFolder(folder) {
  const server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? "/", "http://here").pathname));
    let file = join(folder, path);
    if (file.startsWith(folder) && existsSync(file) && statSync(file).isDirectory()) file = join(file, "index.html");
    if (!file.startsWith(folder) || !existsSync(file)) {
      response.writeHead(404, { "content-type": "text/plain" }).end("not here");
      return;
    }
    response.writeHead(200, { "content-type": types[extname(file)] ?? "application/octet-stream", "content-length": statSync(file).size });
    if (request.method === "HEAD") return response.end();
    createReadStream(file).pipe(response);
  });
  return new Promise((resolve) => {
    server.listen(0, "127.0.0.1", () => {
      const { port } = server.address();
      resolve({ address: `http://127.0.0.1:${port}`, close: () => server.close() });
    });
  });
}
