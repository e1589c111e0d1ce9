import { code, line, nameOf, orNull, yesNo } from '../import-cells';
import { defineImportKind, optional, required } from '../import-kind';

/** Teams with the colours that officials call aloud. */
export const teamsImport = defineImportKind({
  name: 'teams',
  noun: 'team',
  after: ['divisions'],
  columns: {
    code: required(code(), 'short name by which other lists refer to the team'),
    name: required(line(120), 'its name'),
    division: optional(orNull(nameOf('divisions', 'division')), null, 'code of its division'),
    homeColour: optional(line(40), '', 'colour of its shirts at home'),
    awayColour: optional(line(40), '', 'colour of its shirts away'),
    active: optional(yesNo(), true, 'whether it plays this season'),
  },
  keyOf: (team) => team.code,
  complete: (merged) => merged,
  withdraw: (team) => (team.active ? { ...team, active: false } : undefined),
});
