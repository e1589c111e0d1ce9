// Wrong: the page frame knows no feature.
import { slate } from '../slates/slate';

export const known = slate;
