import { checkDesign } from '../rules/design.js';
import { designSchema } from './design.js';

/** One design of a place, with what has to fit together between its keys. */
export const siteSchema = designSchema.superRefine((site, context) => checkDesign(site, context));
