import { checkDesign } from './design-rules.js';
import { designSchema } from './schema.js';

/** One design of a place, with what has to fit together between its keys. */
export const siteSchema = designSchema.superRefine((site, context) => checkDesign(site, context));
