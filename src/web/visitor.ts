/** Who is looking at a page, as far as its frame must know. */
export interface Visitor {
  readonly displayName: string;
  /** Roles in the association at hand; empty where there is none. */
  readonly roles: readonly string[];
  /** The association that the page belongs to. */
  readonly association: FrameAssociation | null;
}

export interface FrameAssociation {
  readonly slug: string;
  readonly name: string;
  /** IANA zone. */
  readonly timeZone: string;
  /** BCP 47 tag of numbers and dates. */
  readonly language: string;
}

/** One way in the head of every page, shown to members who hold one of `roles`. */
export interface NavigationEntry {
  readonly label: string;
  /** Below the association's own address, such as `/officials`; empty is its home. */
  readonly path: string;
  readonly roles: readonly string[];
  /** Pages below this path belong to it as well. */
  readonly section?: string;
}
