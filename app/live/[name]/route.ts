import { readdir, readFile } from "node:fs/promises";
import path from "node:path";

/** The live trial: its two pages and their files, as the build left them. They hold no records; those are asked for with a name. */
export async function GET(_request: Request, { params }: { params: Promise<{ name: string }> }): Promise<Response> {
  const { name } = await params;
  const folder = path.join(process.cwd(), ".next/live");
  const file = (await readdir(folder)).find((one) => one === name || one === `${name}.html`);
  const type = file && types[path.extname(file)];
  if (!type) return new Response("There is no such file.", { status: 404 });
  return new Response(new Uint8Array(await readFile(path.join(folder, file))), {
    headers: {
      "content-type": type,
      // A name with a digest never gets other contents; pages and the worker are asked for each time.
      "cache-control": /-[A-Z0-9]{8}\./.test(file) ? "public, max-age=31536000, immutable" : "no-cache",
    },
  });
}

const types: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".woff2": "font/woff2",
};
