import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

/** What stands at a path. Content that stays may be remembered by the browser, together with the script that it compiled from it. */
export interface Content {
  contentType: string;
  body: string | Buffer;
  stays: boolean;
}

/**
 * Serves contents by their path until the process ends, and gives the address. A server costs the browser half of what requests do
 * that its driver answers, which are also never remembered. What is on this machine is a secure context (W3C Secure Contexts, 3.1).
 */
export function servePages(contentAt: (path: string) => Content | undefined): Promise<string> {
  const server = createServer(({ url = '/' }, response) => {
    const content = contentAt(url);
    if (content) {
      response.setHeader('Content-Type', content.contentType);
      response.setHeader('Cache-Control', content.stays ? 'max-age=3600' : 'no-store');
    } else response.statusCode = 204;
    response.end(content?.body);
  });
  server.unref();
  return new Promise((resolve) => {
    server.listen(0, '127.0.0.1', () => {
      resolve(`http://127.0.0.1:${(server.address() as AddressInfo).port}`);
    });
  });
}
