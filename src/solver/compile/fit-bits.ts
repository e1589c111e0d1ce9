/** Bits of `CompiledSlate.fit`. */
export const FIT_CHIEF = 1;
export const FIT_UMPIRE = 2;
/** The duty overlaps a window that the official would rather keep free. */
export const FIT_RELUCTANT = 4;
/** The official recently saw one of the two teams. */
export const FIT_SEEN_TEAM = 8;
export const FIT_ANY_SEAT = FIT_CHIEF | FIT_UMPIRE;
