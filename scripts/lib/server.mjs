// A static server for the page: the headers a host should send, brotli, and nothing else.
// scripts/serve runs it, and the browser tests import it, so that they meet the same policy.
import { createServer } from 'node:http';
import { readFile, stat } from 'node:fs/promises';
import { networkInterfaces } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';

const types = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.mjs': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',  // anything else keeps a browser from compiling while it loads
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
};
const compressible = new Set(
  ['.css', '.html', '.js', '.json', '.mjs', '.svg', '.ttf', '.txt', '.wasm', '.webmanifest']);

export const policy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "connect-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  "require-trusted-types-for 'script'",
].join('; ');

// A page names its own policy, with the hashes of what stands in it; the header says the same and who
// may show it in a frame, which only a header can.
const policyOf = (html) => {
  const [, own] = /<meta http-equiv="Content-Security-Policy" content="([^"]+)">/.exec(html) ?? [];
  return own ? `${own}; frame-ancestors 'none'` : policy;
};

const fixedHeaders = {
  'Content-Security-Policy': policy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
};

// The file that a request names, or null when it would lie outside the folder.
export function resolveInside(folder, requestPath) {
  let decoded;
  try {
    decoded = decodeURIComponent(requestPath.split(/[?#]/)[0]);
  } catch {
    return null;
  }
  if (decoded.includes('\0') || decoded.includes('\\')) return null;
  if (decoded.split('/').some((part) => part.startsWith('.') && part !== '')) return null;
  const file = path.join(folder, decoded.endsWith('/') ? `${decoded}index.html` : decoded);
  const inside = path.relative(folder, file);
  return inside && !inside.startsWith('..') && !path.isAbsolute(inside) ? file : null;
}

// The compressed form is kept until the file changes: the best brotli takes a second.
const compressed = new Map();

export async function compressedBody(file, encoding) {
  const { mtimeMs, size } = await stat(file);
  const key = `${encoding}:${file}`;
  const known = compressed.get(key);
  if (known && known.mtimeMs === mtimeMs && known.size === size) return known.body;
  const body = readFile(file).then((plain) => encoding === 'br'
    ? promisify(brotliCompress)(plain, { params: {
        [constants.BROTLI_PARAM_QUALITY]: 11,
        [constants.BROTLI_PARAM_SIZE_HINT]: plain.length,
      } })
    : promisify(gzip)(plain, { level: 9 }));
  compressed.set(key, { mtimeMs, size, body });
  return body;
}

function acceptedEncoding(request) {
  const accepted = String(request.headers['accept-encoding'] || '')
    .split(',').map((part) => part.trim())
    .filter((part) => !/;\s*q=0(\.0*)?$/.test(part)).map((part) => part.split(';')[0]);
  return ['br', 'gzip'].find((encoding) => accepted.includes(encoding)) || null;
}

async function answer(folder, request, response) {
  const refuse = (status, text) => {
    response.writeHead(status, { ...fixedHeaders, 'Content-Type': 'text/plain; charset=utf-8' });
    response.end(`${text}\n`);
  };
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405, 'only GET and HEAD');
  const file = resolveInside(folder, request.url);
  const found = file && await stat(file).catch(() => null);
  if (!found || !found.isFile()) return refuse(404, 'not found');

  const extension = path.extname(file);
  const encoding = compressible.has(extension) ? acceptedEncoding(request) : null;
  const body = encoding ? await compressedBody(file, encoding) : await readFile(file);
  const headers = {
    ...fixedHeaders,
    ...extension === '.html' && { 'Content-Security-Policy': policyOf(await readFile(file, 'utf8')) },
    'Content-Type': types[extension] || 'application/octet-stream',
    'Content-Length': body.length,
    // The folder's name changes with its content; all else is asked for anew.
    'Cache-Control': /\/v-[0-9a-f]+\//.test(request.url)
      ? 'public, max-age=31536000, immutable' : 'no-cache',
  };
  if (compressible.has(extension)) headers.Vary = 'Accept-Encoding';
  if (encoding) headers['Content-Encoding'] = encoding;
  response.writeHead(200, headers);
  response.end(request.method === 'HEAD' ? undefined : body);
}

// Serves a folder; port 0 takes any free one. Resolves to { server, port, url, close }.
export function serve(folder, { port = 0, host = '127.0.0.1' } = {}) {
  const server = createServer((request, response) => {
    answer(path.resolve(folder), request, response).catch((error) => {
      if (!response.headersSent) response.writeHead(500, fixedHeaders);
      response.end();
      console.error(`server: ${error.message}`);
    });
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      const actual = server.address().port;
      const close = () => new Promise((done) => {
        server.close(done);
        server.closeAllConnections?.();
      });
      resolve({ server, port: actual, url: `http://localhost:${actual}/`, close });
    });
  });
}

async function main([folder, port]) {
  const { url, port: actual } = await serve(folder, { port: Number(port), host: '0.0.0.0' });
  console.log(`Hearthsight is at ${url}`);
  const others = Object.values(networkInterfaces()).flat()
    .filter(({ family, internal }) => family === 'IPv4' && !internal);
  for (const { address } of others) {
    console.log(`A phone on the same network opens http://${address}:${actual}/`);
  }
  console.log('Ctrl-C stops it.');
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => process.exit(0));
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  main(process.argv.slice(2)).catch((error) => {
    console.error(error.code === 'EADDRINUSE'
      ? `serve: port ${error.port} is taken; choose another with --port` : `serve: ${error.message}`);
    process.exit(1);
  });
}
