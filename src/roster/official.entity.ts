import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A person who officiates. */
@Entity('official')
export class Official {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  /** The association's own number, by which files refer to the official. */
  @Column('text')
  number!: string;

  @Column('text')
  givenName!: string;

  @Column('text')
  familyName!: string;

  @Column('smallint')
  level!: number;

  @Column('boolean')
  mayBeChief!: boolean;

  /** ISO 8601 date; null where unknown, and then the official counts as an adult. */
  @Column({ type: 'date', nullable: true })
  birthDate!: string | null;

  @Column('text')
  guardianName!: string;

  @Column('text')
  guardianContact!: string;

  @Column({ type: 'uuid', nullable: true })
  homePlaceId!: string | null;

  @Column('text')
  homeAddress!: string;

  /** The longest drive from home to a venue. */
  @Column('integer')
  maxHomeMinutes!: number;

  @Column('integer')
  maxGamesPerDay!: number;

  @Column('integer')
  maxGamesPerSlate!: number;

  /** How many games a slate the official would like; null leaves it to the association. */
  @Column({ type: 'double precision', nullable: true })
  wishedGamesPerSlate!: number | null;

  @Column({ type: 'text', nullable: true })
  email!: string | null;

  @Column('text')
  phone!: string;

  @Column('boolean')
  sharePhoneWithCrew!: boolean;

  /** BCP 47 tags. */
  @Column({ type: 'text', array: true })
  languages!: string[];

  @Column({ type: 'date', nullable: true })
  certificateExpiresOn!: string | null;

  @Column('boolean')
  active!: boolean;

  @Column('integer')
  version!: number;
}
