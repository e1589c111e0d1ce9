import { line, wholeNumber } from '../import-cells';
import { defineImportKind, required } from '../import-kind';

/** The association's ladder of experience. */
export const levelsImport = defineImportKind({
  name: 'levels',
  noun: 'level',
  after: [],
  columns: {
    level: required(wholeNumber(0, 99), 'the step; a higher one is more experienced'),
    name: required(line(60), "the step's name"),
  },
  keyOf: ({ level }) => String(level),
  complete: (merged) => merged,
  checkAll: (rows, { state, fault }) => {
    const names = new Map([...state.all('levels')].map(([key, record]) => [key, record['name']]));
    for (const { key, record } of rows) names.set(key, record.name);
    for (const { row, key, record } of rows) {
      const twin = [...names].find(([other, name]) => other !== key && name === record.name);
      if (twin !== undefined)
        fault(row, 'name', `Level ${twin[0]} has this name too.`, 'give each level a name of its own');
    }
  },
});
