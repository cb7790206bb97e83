import { setSunSource } from '../../geometry/sun/sun-floor.ts';
import { sweptArea } from '../../geometry/sun/swept.ts';

/* Unit tests work direct sun out at once, as the command line does. */
setSunSource(sweptArea);
