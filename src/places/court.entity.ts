import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A playing court of a venue. */
@Entity('court')
export class Court {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  venueId!: string;

  @Column('text')
  name!: string;
}
