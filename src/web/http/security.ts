import cookie from '@fastify/cookie';
import helmet from '@fastify/helmet';
import multipart from '@fastify/multipart';
import type { FastifyInstance } from 'fastify';

/** Bytes of one uploaded file at most; a season of 10,000 games takes about 1.5 million. */
export const fileBytesMax = 8_000_000;
/** Files of one upload at most: one of each kind, with room to spare. */
const filesMax = 16;

/**
 * Cookies, uploads and the headers that bind a browser: nothing is loaded but from here, no script or style stands in a page, no
 * other site may frame one.
 *
 * @param options.isSecure whether people reach the service by https, and are to keep doing so
 */
export async function registerSecurity(
  server: FastifyInstance,
  options: { isSecure: boolean },
): Promise<void> {
  await server.register(cookie);
  await server.register(multipart, {
    attachFieldsToBody: true,
    limits: { fileSize: fileBytesMax, files: filesMax, fields: 50, fieldSize: 100_000 },
  });
  await server.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        styleSrc: ["'self'"],
        scriptSrc: ["'self'"],
        imgSrc: ["'self'", 'data:'],
        connectSrc: ["'self'"],
        formAction: ["'self'"],
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
      },
    },
    strictTransportSecurity: options.isSecure ? { maxAge: 31_536_000 } : false,
    // With `no-referrer` browsers would send forms with `Origin: null`, which cannot be told from a foreign one.
    referrerPolicy: { policy: 'same-origin' },
    xFrameOptions: { action: 'deny' },
  });
}
