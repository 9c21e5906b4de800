import type { FaultLog } from '../../api/dispatch.ts';
import { openProgram } from '../open-program.ts';
import type { Reopened } from './running.ts';
import { startServer } from './server.ts';

export interface LoopbackOptions {
  readonly dataFolder: string;
  /** The built board. */
  readonly rendererFolder: string;
  readonly log?: FaultLog;
  readonly onExchanged?: () => void;
  readonly onPage?: (page: string, here: boolean) => void;
  /** What to do where the program is started once more; at rest it gives one more address. */
  readonly onAgain?: (newAddress: () => string) => Reopened | undefined;
}

export interface Loopback {
  /** The first address, good for one page. */
  readonly address: string;
  /** One more address, for one more page. */
  readonly newAddress: () => string;
  readonly close: () => Promise<void>;
}

/** The whole loopback host: the store open, the board served. Throws a StoreError of one line. */
export async function startLoopback(options: LoopbackOptions): Promise<Loopback> {
  const {
    dataFolder,
    rendererFolder,
    log = console.error,
    onExchanged = () => {},
    onPage = () => {},
    onAgain = (newAddress) => ({ window: false, address: newAddress() }),
  } = options;
  const program = openProgram(dataFolder, log);
  try {
    const { newAddress, close } = await startServer({
      handlers: program.handlers,
      photos: program.photos,
      outputs: program.outputs,
      shop: program.shop,
      rendererFolder,
      dataFolder,
      log,
      onExchanged,
      onPage,
      onAgain,
    });
    return {
      address: newAddress(),
      newAddress,
      close: async () => {
        await close();
        program.close();
      },
    };
  } catch (error) {
    program.close();
    throw error;
  }
}
