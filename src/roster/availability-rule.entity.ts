import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A stretch of local time, once or repeating, in which an official is available, busy or reluctant. */
@Entity('availability_rule')
export class AvailabilityRule {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  officialId!: string;

  @Column('text')
  kind!: 'available' | 'busy' | 'reluctant';

  /** ISO 8601 date of the first (or only) stretch. */
  @Column('date')
  localDate!: string;

  /** HH:MM:SS, when each stretch begins in `timeZone`. */
  @Column('time')
  localTime!: string;

  /** Wall-clock minutes. */
  @Column('integer')
  durationMinutes!: number;

  @Column('text')
  timeZone!: string;

  /** RFC 5545 RRULE value without the property name; null happens once. */
  @Column({ type: 'text', nullable: true })
  recurrence!: string | null;

  /** Local dates on which a repeating stretch does not happen. */
  @Column({ type: 'date', array: true })
  exceptDates!: string[];

  /** As in RFC 7953: 1 is strongest, 0 (none) weakest. */
  @Column('smallint')
  priority!: number;

  @Column('text')
  source!: 'official' | 'assignor' | 'import' | 'calendar';

  @Column('text')
  note!: string;

  @Column('integer')
  version!: number;
}
