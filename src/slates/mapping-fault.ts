/** What a fault is about, so that a page can lead to where it is mended. */
export interface FaultLink {
  readonly kind: 'official' | 'game' | 'venue' | 'slate';
  readonly id: string;
}

/** Something in an association's records that a slate's crews suffer from. */
export interface MappingFault {
  /** `stops`: no crews can be built before it is mended. `left-out`: a person or game takes no part. `note`: worth knowing. */
  readonly severity: 'stops' | 'left-out' | 'note';
  readonly code:
    | 'official-without-home'
    | 'official-without-availability'
    | 'certificate-expired'
    | 'game-without-position'
    | 'game-without-court'
    | 'locked-official-left-out'
    | 'no-games'
    | 'no-officials';
  /** A sentence that names the thing and says what to do. */
  readonly message: string;
  readonly link: FaultLink;
}
