/* Decodes a file of unsigned 8-bit samples with libltc, over and over; prints every time it reads, and then the
   microseconds of processor time that a run takes. Arguments: the file, samples a frame, runs. */
#include <ltc.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static int read_all(const unsigned char *sound, size_t size, int length, int print) {
  LTCDecoder *decoder = ltc_decoder_create(length, 32);
  LTCFrameExt frame;
  int count = 0;
  for (size_t at = 0; at < size; at += 128) {
    size_t block = size - at < 128 ? size - at : 128;
    ltc_decoder_write(decoder, (ltcsnd_sample_t *)sound + at, block, (ltc_off_t)at);
    while (ltc_decoder_read(decoder, &frame)) {
      SMPTETimecode time;
      ltc_frame_to_time(&time, &frame.ltc, 0);
      count += 1;
      if (print) printf("%02d:%02d:%02d:%02d\n", time.hours, time.mins, time.secs, time.frame);
    }
  }
  ltc_decoder_free(decoder);
  return count;
}

int main(int argc, char **argv) {
  if (argc < 4) return 2;
  FILE *file = fopen(argv[1], "rb");
  if (!file) return 2;
  unsigned char *sound = malloc(1 << 24);
  size_t size = fread(sound, 1, 1 << 24, file);
  int length = atoi(argv[2]), runs = atoi(argv[3]);
  read_all(sound, size, length, 1);
  clock_t from = clock();
  for (int run = 0; run < runs; run += 1) read_all(sound, size, length, 0);
  printf("%.3f\n", (double)(clock() - from) * 1e6 / CLOCKS_PER_SEC / runs);
  return 0;
}
