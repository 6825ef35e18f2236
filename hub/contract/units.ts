import { z } from 'zod';

/** The units people of a farm read and type; what is left out is °C, kg, 24 and monday. */
export const units = z.strictObject({
  temperature: z.enum(['C', 'F']).optional(),
  weight: z.enum(['kg', 'lb']).optional(),
  clock: z.literal([24, 12]).optional(),
  weekStart: z.enum(['monday', 'sunday', 'saturday']).optional(),
});
