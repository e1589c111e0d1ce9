/** What a member may do in an association; one person may hold several. */
export const roles = ['administrator', 'assignor', 'observer', 'treasurer', 'official'] as const;

export type Role = (typeof roles)[number];
