import { fileURLToPath } from 'node:url';

/** The path of the server's bundle, as `node test/prepare.mjs` makes it. */
export const serverBundle = fileURLToPath(new URL('../../../../dist/server.js', import.meta.url));
