import type { Source } from './source';

export const moments = ['before', 'toss', 'during', 'time-out', 'after'] as const;

/** When a line of the checklist is due. */
export type Moment = (typeof moments)[number];

export type ChecklistRole = 'chief' | 'umpire' | 'both';

/** One line of the checklist. `{onCourtMinutes}` in a text stands for the association's lead before tip-off. */
export interface ChecklistItem {
  /** Permanent. */
  readonly id: string;
  readonly moment: Moment;
  readonly role: ChecklistRole;
  readonly text: string;
  readonly source: Source;
}

export const momentTitles: Record<Moment, string> = {
  before: 'Before the game',
  toss: 'At the toss',
  during: 'During play',
  'time-out': 'Time-outs and half-time',
  after: 'After the game',
};
