import { createHash } from 'node:crypto';
import { clientScript } from './client/client-script';
import { styleSheet } from './style/style-sheet';

/** Addresses of what every page links to. */
export interface AssetPaths {
  readonly style: string;
  readonly script: string;
  readonly icon: string;
}

/** A file that pages link to. Its name holds the hash of its content, so browsers may keep it for ever. */
export interface Asset {
  readonly path: string;
  readonly contentType: string;
  readonly body: string;
}

const icon =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 22 22"><circle cx="11" cy="11" r="10" fill="#b34a00"/>' +
  '<path d="M11 1v20M1 11h20M4 4c4 4 4 10 0 14M18 4c-4 4-4 10 0 14" fill="none" stroke="#fffdf8" stroke-width="1.5"/></svg>';

function asset(name: string, extension: string, contentType: string, body: string): Asset {
  const hash = createHash('sha256').update(body).digest('hex').slice(0, 16);
  return { path: `/assets/${name}.${hash}.${extension}`, contentType, body };
}

const style = asset('style', 'css', 'text/css; charset=utf-8', styleSheet);
const script = asset('script', 'js', 'text/javascript; charset=utf-8', clientScript);
const drawing = asset('icon', 'svg', 'image/svg+xml', icon);

export const assets: readonly Asset[] = [style, script, drawing];

export const assetPaths: AssetPaths = { style: style.path, script: script.path, icon: drawing.path };
