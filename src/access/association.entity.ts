import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { AssociationPolicy, SlateWeights, TravelModel } from './association-policy';

/** The tenant: one referee association, with its zone, policy, weights and travel model. */
@Entity('association')
export class Association {
  @PrimaryColumn('uuid')
  id!: string;

  /** Short name for addresses: lower-case words joined by hyphens. */
  @Column('text')
  slug!: string;

  @Column('text')
  name!: string;

  /** IANA zone in which the association counts days. */
  @Column('text')
  timeZone!: string;

  /** BCP 47 language tag of dates and numbers on pages. */
  @Column('text')
  language!: string;

  /** The one date format, besides ISO 8601, that the association's own files use. */
  @Column('text')
  dateFormat!: string;

  /** ISO 4217 code. */
  @Column({ type: 'char', length: 3 })
  currency!: string;

  @Column('text')
  emergencyNumber!: string;

  @Column({ type: 'text', nullable: true })
  replyAddress!: string | null;

  @Column('jsonb')
  policy!: AssociationPolicy;

  @Column('jsonb')
  weights!: SlateWeights;

  @Column('jsonb')
  travelModel!: TravelModel;

  @Column('integer')
  version!: number;

  @Column('timestamptz')
  createdAt!: Date;

  @Column('timestamptz')
  updatedAt!: Date;
}
