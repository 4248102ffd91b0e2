/**
 * Where the bytes of one file come from; an adapter puts a File or a path behind it. `read` gives the bytes
 * from `from` up to but not including `to`, fewer only when the file ends before, and rejects when the device fails.
 */
export interface ByteSource {
  readonly name: string;
  readonly size: number;
  read(from: number, to: number): Promise<Uint8Array>;
}
