/** The two places of a crew. */
export const seatNames = ['chief', 'umpire'] as const;

export type SeatName = (typeof seatNames)[number];
