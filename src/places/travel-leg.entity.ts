import { Column, Entity, PrimaryColumn } from 'typeorm';

/** How long and how far it is from one place to another; a measured leg overrides an estimate. */
@Entity('travel_leg')
export class TravelLeg {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  fromPlaceId!: string;

  @PrimaryColumn('uuid')
  toPlaceId!: string;

  @PrimaryColumn('text')
  source!: 'measured' | 'estimated';

  @Column('integer')
  minutes!: number;

  @Column('integer')
  metres!: number;

  /** Who or what measured or estimated it. */
  @Column('text')
  model!: string;

  @Column('timestamptz')
  notedAt!: Date;
}
