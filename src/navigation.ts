import type { NavigationEntry } from './web/visitor';

/** The ways in the head of every page, and who sees them. */
export const navigation: readonly NavigationEntry[] = [
  { label: 'Slates', path: '', section: '/slates', roles: ['assignor', 'administrator', 'observer'] },
  { label: 'My games', path: '/my-games', roles: ['official'] },
  { label: 'My calendar', path: '/my-calendar', roles: ['official'] },
  { label: 'Officials', path: '/officials', roles: ['assignor', 'administrator', 'observer'] },
  { label: 'Games', path: '/games', roles: ['assignor', 'administrator', 'observer'] },
  { label: 'Venues', path: '/venues', roles: ['assignor', 'administrator', 'observer', 'official'] },
  { label: 'Bring in', path: '/imports', roles: ['assignor', 'administrator'] },
];
