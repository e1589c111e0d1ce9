// Goal: the terminal shows what would be added, changed, removed and left, and each fault on a line of its own.
import { faultText, outcomeText, planText } from '../../../src/cli/import-text';
import { after, basics, planned } from './imported';

const established = after(planned(basics));

test('a plan as a table with its objects', () => {
  const teams = 'code,name,division,active\nHER,Egrets,,no\nTER,Terns,D1,\nEID,Eiders,D1,\n';
  const plan = planned({ teams }, established, { whole: true });
  expect(planText(plan, { full: false }).split('\n')).toEqual([
    'List   Added  Changed  Removed  Left',
    '-----  -----  -------  -------  ----',
    'teams  1      1        1        1',
    '+ team EID',
    '~ team HER: name Herons → Egrets; division D1 → (empty); active yes → no',
    '- team GUL: no longer active',
  ]);
  expect(outcomeText(plan, 'planned')).toBe('Nothing was stored: this was a dry run.');
  expect(outcomeText(plan, 'stored')).toBe('Stored.');
  expect(outcomeText(planned({ teams: basics.teams }, established), 'stored')).toContain('nothing to do');
});

test('many new objects are shortened unless asked for', () => {
  const teams = `code,name\n${Array.from({ length: 14 }, (_, index) => `T${index},Team ${index}`).join('\n')}\n`;
  const plan = planned({ teams });
  expect(planText(plan, { full: false })).toContain('+ … and 4 more; --full shows them all');
  expect(planText(plan, { full: true }).match(/^\+ team /gm)).toHaveLength(14);
});

test('faults', () => {
  const plan = planned({ teams: 'code,name,division\nEID,Eiders,D9\nEI2,,D1\n' }, established);
  expect(faultText(plan).split('\n')).toEqual([
    'teams.csv:2:division  "D9"  There is no division "D9". — did you mean "D1"?',
    'teams.csv:3:name  It is empty. — write text of at most 120 characters',
  ]);
  expect(outcomeText(plan, 'refused')).toBe('2 faults; nothing was stored.');
});
