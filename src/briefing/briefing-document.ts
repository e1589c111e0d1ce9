import type { ChecklistRole, Moment } from './content/checklist-item';
import type { SeatName } from '../slates/seat-name';

/** The pre-game sheet of one game as a plain value; every word that a page or a print shows is in it. */
export interface Briefing {
  readonly association: string;
  readonly title: string;
  /** Label and text, such as "Tip-off" and "18:30, Saturday 28 November 2026". */
  readonly head: readonly LabelledText[];
  readonly teams: readonly { readonly side: string; readonly name: string; readonly colour: string }[];
  readonly crew: readonly CrewLine[];
  readonly warnings: readonly SourcedText[];
  readonly clock: readonly ClockLine[];
  readonly checklist: readonly ChecklistSection[];
  /** What is played otherwise than by the standard rules. */
  readonly divisionRules: readonly RuleDifference[];
  readonly divisionNote: string;
  readonly venue: readonly VenueNote[];
  readonly safety: readonly VenueNote[];
  /** Minors, concussion, and who decides. */
  readonly care: readonly SourcedText[];
  readonly contingencies: readonly {
    readonly title: string;
    readonly steps: readonly string[];
    readonly source: string;
  }[];
  readonly ruleEdition: string;
}

export interface LabelledText {
  readonly label: string;
  readonly text: string;
}

/** A line with the words that say where it comes from. */
export interface SourcedText {
  readonly text: string;
  readonly source: string;
}

export interface CrewLine {
  readonly seat: SeatName;
  readonly role: string;
  readonly name: string;
  /** How to reach them, or why that is not told. */
  readonly contact: string;
  /** Number to call, for a link; null where `contact` holds none of their own. */
  readonly callNumber: string | null;
}

export interface ClockLine extends SourcedText {
  /** `HH:MM`, with seconds where they are not 0, by the clock of the venue. */
  readonly time: string;
  readonly at: Date;
  /** An estimate, not an appointment. */
  readonly isAbout: boolean;
}

export interface ChecklistSection {
  readonly moment: Moment;
  readonly title: string;
  readonly items: readonly ChecklistLine[];
}

export interface ChecklistLine extends SourcedText {
  readonly id: string;
  readonly role: ChecklistRole;
}

export interface RuleDifference extends SourcedText {
  readonly label: string;
  /** What the standard rules say. */
  readonly standard: string;
}

export interface VenueNote extends LabelledText {
  /** Nobody has entered it; `text` then says what to do. */
  readonly isMissing: boolean;
}
