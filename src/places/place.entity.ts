import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A position on the ground (WGS 84 degrees): a venue or a home. */
@Entity('place')
export class Place {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  @Column('double precision')
  latitude!: number;

  @Column('double precision')
  longitude!: number;
}
