import { readFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';

export type JsonFile =
  | { readonly ok: true; readonly value: unknown }
  /** A sentence that names the file. */
  | { readonly ok: false; readonly message: string };

/** No honest slate comes near this; a small gzip file can claim to hold far more. */
const UNPACKED_BYTES_MAX = 512 * 1024 * 1024;

/** Reads a JSON file, unpacking it when it is gzipped (whatever its name). */
export async function readJsonFile(file: string): Promise<JsonFile> {
  try {
    const bytes = await readFile(file);
    const isGzip = bytes[0] === 0x1f && bytes[1] === 0x8b;
    const unpacked = isGzip ? await promisify(gunzip)(bytes, { maxOutputLength: UNPACKED_BYTES_MAX }) : bytes;
    const text = new TextDecoder('utf-8', { fatal: true }).decode(unpacked);
    return { ok: true, value: JSON.parse(text) as unknown };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return { ok: false, message: `${file}: cannot be read as JSON (${reason})` };
  }
}
