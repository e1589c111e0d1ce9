// Wrong: an arrow that goes up.
import { slate } from '../slates/slate';

export const account = () => slate;
