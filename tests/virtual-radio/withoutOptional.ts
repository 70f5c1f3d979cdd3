// Preloaded: as after `npm install --omit=optional`.
import Module from 'node:module';

type Resolve = (request: string, ...rest: unknown[]) => string;
const loader = Module as unknown as { _resolveFilename: Resolve };
const resolve = loader._resolveFilename;
loader._resolveFilename = (request, ...rest) => {
  if (
    request === '@abandonware/noble' ||
    request.startsWith('@libsql/') ||
    request.startsWith('@node-rs/argon2-') ||
    request.endsWith('.node')
  )
    throw Object.assign(new Error(`Cannot find module '${request}'`), { code: 'MODULE_NOT_FOUND' });
  return resolve.call(Module, request, ...rest);
};
