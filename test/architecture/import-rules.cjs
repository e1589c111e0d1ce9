// The rooms of the house and who may import whom, checked by dependency-cruiser (`npm run imports`).
// An arrow only ever points to a room named in the same line; anything else is a fault.
const rooms = {
  solver: [],
  platform: [],
  access: ['platform'],
  places: ['platform', 'access'],
  roster: ['platform', 'access', 'places'],
  games: ['platform', 'access', 'places', 'roster'],
  slates: ['platform', 'access', 'places', 'roster', 'games', 'solver'],
  calendar: ['platform', 'access', 'places', 'roster', 'games', 'slates', 'solver'],
  notices: ['platform', 'access', 'places', 'roster', 'games', 'slates', 'solver'],
  briefing: ['platform', 'access', 'places', 'roster', 'games', 'slates', 'solver'],
  season: ['platform', 'access', 'places', 'roster', 'games', 'slates', 'solver'],
  web: ['platform'],
  demo: ['platform', 'access', 'places', 'roster', 'games', 'slates', 'solver'],
};
// Every feature may draw pages in the shared frame; the frame knows no feature.
const pageFrame = [
  'access',
  'places',
  'roster',
  'games',
  'slates',
  'calendar',
  'notices',
  'briefing',
  'season',
];

module.exports = {
  forbidden: [
    ...Object.entries(rooms).map(([room, allowed]) => {
      const may = [room, ...allowed, ...(pageFrame.includes(room) ? ['web'] : [])];
      return {
        name: `${room}-imports`,
        comment: `src/${room} may import ${may.join(', ')} and nothing else of ours`,
        severity: 'error',
        from: { path: `^src/${room}/` },
        to: { path: '^(src|migrations|test)/', pathNot: `^src/(${may.join('|')})/` },
      };
    }),
    { name: 'no-circles', severity: 'error', from: { path: '^src/' }, to: { circular: true } },
    {
      name: 'solver-is-pure',
      comment:
        'The solver is mathematics: no database, no framework, no clock, no files; only worker threads.',
      severity: 'error',
      from: { path: '^src/solver/' },
      to: {
        path: [
          'node_modules/(@nestjs|typeorm|pg|pg-boss|luxon|zod|preact)',
          '^(fs|net|http|https|child_process|node:fs|node:net|node:http|node:child_process)',
        ],
      },
    },
    {
      name: 'solver-has-one-door',
      comment: 'Other rooms reach the solver through src/solver/index.ts.',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/solver/' },
      to: { path: '^src/solver/', pathNot: '^src/solver/index\\.ts$' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.js', '.json'] },
  },
};
