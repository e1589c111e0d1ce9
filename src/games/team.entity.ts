import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A team, with the colours that officials call aloud. */
@Entity('team')
export class Team {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  @Column('text')
  code!: string;

  @Column('text')
  name!: string;

  @Column({ type: 'uuid', nullable: true })
  divisionId!: string | null;

  @Column('text')
  homeColour!: string;

  @Column('text')
  awayColour!: string;

  @Column('boolean')
  active!: boolean;

  @Column('integer')
  version!: number;
}
