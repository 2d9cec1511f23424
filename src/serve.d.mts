/** Types of the server, for the tests. */

export interface Serving {
  readonly port: number;
  close(): Promise<void>;
}

export function serve(options: {
  readonly folder: string;
  readonly port?: number;
  readonly host?: string;
  readonly tls?: { readonly cert: Uint8Array; readonly key: Uint8Array };
}): Promise<Serving>;
