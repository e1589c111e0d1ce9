// Goal: the documentation of the lists names every column that the importers know, and no other.
import { readFileSync } from 'node:fs';
import { ownKinds } from '../../../src/games/imports/import-kinds';
import { crewsKind } from '../../../src/slates/import-crews';
import { chapterOf } from '../../support/demo/seed-readme';

test.each([...ownKinds, crewsKind].map(({ kind }) => [kind.name, kind] as const))('%s', (_, kind) => {
  const words = (text: string) => text.replace(/[ -]+/g, ' ').trim();
  expect(words(readFileSync('seed/README.md', 'utf8'))).toContain(words(chapterOf(kind)));
});
