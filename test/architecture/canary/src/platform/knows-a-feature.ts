// Wrong: the platform knows no feature.
import { account } from '../access/account';

export const known = account;
