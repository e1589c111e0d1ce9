// Wrong: past the solver's door, and in a circle with the account.
import { account } from '../access/account';
import { door } from '../solver';
import { wrong } from '../solver/reads-database';

export const slate = () => [wrong, door, account];
