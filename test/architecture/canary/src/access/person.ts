export const person = 1;
