/** Where a line of a briefing comes from, so that a reader can weigh it. */
export type Source =
  /** An article of the playing rules, in the edition that the association has confirmed. */
  | { readonly kind: 'rule'; readonly article: string }
  /** What this association has decided. */
  | { readonly kind: 'policy' }
  /** What crews commonly do; nothing published was found. */
  | { readonly kind: 'practice' }
  /** Stated from memory; nobody has held it against a publication. */
  | { readonly kind: 'memory' }
  /** Another publication, by its name. */
  | { readonly kind: 'published'; readonly name: string };

export const policy: Source = { kind: 'policy' };
export const practice: Source = { kind: 'practice' };
export const memory: Source = { kind: 'memory' };
export const olderSlides: Source = { kind: 'published', name: 'older FIBA slides for two officials' };
export const conferenceSheets: Source = {
  kind: 'published',
  name: 'several federations’ conference sheets',
};

export function rule(article: string): Source {
  return { kind: 'rule', article };
}

/** As printed beside the line, such as "FIBA Official Basketball Rules 2024, Art. 46.9". */
export function sourceWords(source: Source, ruleEdition: string): string {
  switch (source.kind) {
    case 'rule':
      return `${ruleEdition}, Art. ${source.article}`;
    case 'policy':
      return 'association policy';
    case 'practice':
      return 'common practice, no source';
    case 'memory':
      return 'from memory, check it with your association';
    case 'published':
      return source.name;
  }
}
