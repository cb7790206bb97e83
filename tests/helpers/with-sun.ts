import { setSunSource } from '../../geometry/sun/sun-floor.ts';
import { sweptArea } from '../../geometry/sun/swept.ts';

/* Unit tests compute direct sun synchronously, as the command line does. */
setSunSource(sweptArea);
