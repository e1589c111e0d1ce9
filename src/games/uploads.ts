import type { MultipartFile } from '@fastify/multipart';
import { RequestError } from '../platform/request-error';
import type { ImportFile } from './imports/import-plan';

/** What an upload may hold, by field name: text fields, and a file for each kind of list. */
type MultipartBody = Record<string, unknown>;

/**
 * The files of an upload, each under the kind that its field is named after; fields left empty are none.
 *
 * @param kinds names of the kinds of lists
 * @throws {RequestError} `REQUEST.TOO_LARGE`
 */
export async function uploadedFiles(body: unknown, kinds: readonly string[]): Promise<ImportFile[]> {
  const files: ImportFile[] = [];
  for (const kind of kinds) {
    const field = (body as MultipartBody | undefined)?.[kind];
    for (const part of Array.isArray(field) ? (field as unknown[]) : [field]) {
      if (!isFile(part)) continue;
      const bytes = await part.toBuffer();
      if (part.file.truncated)
        throw new RequestError('REQUEST.TOO_LARGE', { detail: `${part.filename} is too large.` });
      // Browsers send an empty file for a field that was left empty.
      if (part.filename !== '' || bytes.length > 0) files.push({ kind, name: part.filename, bytes });
    }
  }
  return files;
}

/** A text field of an upload. */
export function uploadedText(body: unknown, name: string): string | null {
  const field = (body as MultipartBody | undefined)?.[name];
  const value = (field as { value?: unknown } | undefined)?.value;
  return typeof value === 'string' ? value : null;
}

function isFile(part: unknown): part is MultipartFile {
  return typeof part === 'object' && part !== null && (part as { type?: unknown }).type === 'file';
}
