import { fail, ok, type Result } from '../../shared/result.ts';
import { firstBadQuantity } from '../quantity.ts';

const RTP = 12;
const UDP = 8;
const IP = 20;
const ETHERNET = 18;
const PREAMBLE_AND_GAP = 20;
/** An Ethernet frame carries 1500 bytes of IP. */
const LARGEST_IP_PACKET = 1500;

/** One RTP stream; `samplesPerPacket` 48 is 1 ms at 48 kHz. */
export interface AudioStream {
  readonly channels: number;
  readonly sampleRate: number;
  readonly samplesPerPacket: number;
  readonly bytesPerSample?: 2 | 3;
}

export interface StreamLoad {
  readonly payloadBytes: number;
  readonly packetsPerSecond: number;
  readonly audioMbps: number;
  readonly ipMbps: number;
  readonly wireMbps: number;
}

/**
 * The network load of a stream: payload alone, with RTP, UDP and IP headers, and on the wire with frame,
 * preamble and gap, in Mbit/s (10⁶). A packet that does not fit one frame is `packet-too-large`. Example: 8
 * channels at 48 kHz, 48 samples, 24 bit: 1152 bytes, 9.216, 9.536 and 9.840 Mbit/s.
 */
export function streamLoad(stream: AudioStream): Result<StreamLoad> {
  const { channels, sampleRate, samplesPerPacket, bytesPerSample = 3 } = stream;
  const problem = firstBadQuantity([
    { field: 'channels', value: channels, min: 1, max: 512, whole: true },
    { field: 'sampleRate', value: sampleRate, min: 8000, max: 384_000 },
    { field: 'samplesPerPacket', value: samplesPerPacket, min: 1, max: 4096, whole: true },
  ]);
  if (problem) return fail(problem);
  const payloadBytes = channels * samplesPerPacket * bytesPerSample;
  const ipBytes = payloadBytes + RTP + UDP + IP;
  if (ipBytes > LARGEST_IP_PACKET) {
    const mostChannels = Math.floor((LARGEST_IP_PACKET - RTP - UDP - IP) / samplesPerPacket / bytesPerSample);
    return fail({ code: 'packet-too-large', payloadBytes, mostChannels });
  }
  const packetsPerSecond = sampleRate / samplesPerPacket;
  const mbps = (bytes: number): number => (bytes * 8 * packetsPerSecond) / 1e6;
  return ok({
    payloadBytes,
    packetsPerSecond,
    audioMbps: mbps(payloadBytes),
    ipMbps: mbps(ipBytes),
    wireMbps: mbps(ipBytes + ETHERNET + PREAMBLE_AND_GAP),
  });
}

/**
 * Several streams on one link: Mbit/s on the wire, and the share of the link (Mbit/s) that is, one way.
 * Example: two streams of 8 channels at 48 kHz, 1 ms, on 100 Mbit/s: 19.68, 19.68 %.
 */
export function linkLoad(
  streams: readonly AudioStream[],
  linkMbps: number,
): Result<{ readonly wireMbps: number; readonly percent: number }> {
  const problem = firstBadQuantity([{ field: 'linkMbps', value: linkMbps, min: 1, max: 1e6 }]);
  if (problem) return fail(problem);
  let wireMbps = 0;
  for (const stream of streams) {
    const load = streamLoad(stream);
    if (!load.ok) return load;
    wireMbps += load.value.wireMbps;
  }
  return ok({ wireMbps, percent: (wireMbps / linkMbps) * 100 });
}
