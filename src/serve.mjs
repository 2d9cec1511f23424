/** Builds the page if need be and serves it: on this computer over http, in the local network only over https. */

import { open, readFile } from 'node:fs/promises';
import { createServer as createHttp } from 'node:http';
import { createServer as createHttps } from 'node:https';
import { networkInterfaces } from 'node:os';
import { dirname, extname, join, normalize, sep } from 'node:path';
import { pipeline } from 'node:stream';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';

const TYPES = new Map([
  ['.html', 'text/html; charset=utf-8'],
  ['.js', 'text/javascript; charset=utf-8'],
  ['.css', 'text/css; charset=utf-8'],
  ['.svg', 'image/svg+xml'],
  ['.png', 'image/png'],
  ['.woff2', 'font/woff2'],
  ['.json', 'application/json'],
  ['.webmanifest', 'application/manifest+json'],
  ['.txt', 'text/plain; charset=utf-8'],
  ['.gz', 'application/gzip'],
]);

/** Sends the files of a folder; anything that is no file is answered with 404, "/" with index.html. */
function answer(folder) {
  return async (request, response) => {
    const end = (status) => response.writeHead(status).end();
    if (request.method !== 'GET' && request.method !== 'HEAD') return end(405);
    let path;
    try {
      path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname));
    } catch {
      return end(400);
    }
    const file = join(folder, path.endsWith(sep) || path.endsWith('/') ? join(path, 'index.html') : path);
    if (!file.startsWith(folder + sep)) return end(404);
    // Opened before it is looked at: length and content belong together, also where a new build is laid over this one meanwhile.
    const opened = await open(file).catch(() => undefined);
    const found = await opened?.stat();
    if (!opened || !found?.isFile()) {
      await opened?.close();
      return end(404);
    }
    response.writeHead(200, {
      'content-type': TYPES.get(extname(file)) ?? 'application/octet-stream',
      'content-length': found.size,
      'cache-control': file.includes(`${sep}assets${sep}`)
        ? 'public, max-age=31536000, immutable'
        : 'no-cache',
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
    });
    if (request.method !== 'HEAD') return pipeline(opened.createReadStream(), response, () => {});
    await opened.close();
    return response.end();
  };
}

/**
 * Starts serving. Without a certificate only addresses of this computer are listened on.
 * @param {{ folder: string, port?: number, host?: string, tls?: { cert: Buffer, key: Buffer } }} options
 * @returns {Promise<{ port: number, close: () => Promise<void> }>}
 */
export async function serve({ folder, port = 0, host = 'localhost', tls }) {
  const server = tls ? createHttps(tls, answer(folder)) : createHttp(answer(folder));
  await new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, resolve);
  });
  const address = server.address();
  return {
    port: typeof address === 'object' && address ? address.port : port,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

async function main() {
  const { values } = parseArgs({
    options: {
      port: { type: 'string', default: '4820' },
      lan: { type: 'boolean', default: false },
      cert: { type: 'string' },
      key: { type: 'string' },
      'no-build': { type: 'boolean', default: false },
    },
  });
  const { lan, cert, key } = values;
  if (lan && !(cert && key)) {
    console.error(
      'Beyond this computer the notebook is served over https only: without it a tablet can not keep the program or ' +
        'its notebooks.\nGive a certificate and its key: npm start -- --lan --cert shop.crt --key shop.key',
    );
    process.exitCode = 2;
    return;
  }
  const root = join(dirname(fileURLToPath(import.meta.url)), '..');
  if (!values['no-build']) {
    const { build } = await import('vite');
    await build({ root, configFile: join(root, 'vite.config.ts'), logLevel: 'warn' });
  }
  const tls = lan && cert && key ? { cert: await readFile(cert), key: await readFile(key) } : undefined;
  const options = { folder: join(root, 'dist'), host: lan ? '0.0.0.0' : 'localhost', ...(tls && { tls }) };
  const wanted = Number(values.port);
  const { port } = await serve({ ...options, port: wanted }).catch((reason) => {
    if (reason.code !== 'EADDRINUSE') throw reason;
    console.log(
      `Port ${wanted} is taken; another one is used. Notebooks belong to the address they were made at.`,
    );
    return serve({ ...options, port: 0 });
  });
  if (!lan) {
    console.log(`Swarfbook: http://localhost:${port}/   (Ctrl+C ends it)`);
    return;
  }
  const addresses = Object.values(networkInterfaces())
    .flatMap((each) => each ?? [])
    .filter((each) => each.family === 'IPv4' && !each.internal)
    .map((each) => `https://${each.address}:${port}/`);
  console.log(['Swarfbook in this network:', ...addresses, '(Ctrl+C ends it)'].join('\n'));
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) await main();
