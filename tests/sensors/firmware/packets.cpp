// Prints packets made with the firmware's header, one in a line, hexadecimal. Arguments: samples per packet, first
// time in us. Readings are a fixed pattern that the test knows too.
#include <cstdio>
#include <cstdlib>
#include <initializer_list>

#include "stillcatch_packet.h"

static void print(const uint8_t *bytes, size_t n) {
  for (size_t i = 0; i < n; i++) std::printf("%02x", bytes[i]);
  std::printf("\n");
}

int main(int argc, char **argv) {
  const unsigned n = argc > 1 ? std::strtoul(argv[1], nullptr, 10) : 1;
  uint32_t t = argc > 2 ? std::strtoul(argv[2], nullptr, 10) : 0;
  uint8_t info[64];
  print(info, sc_info(info, sizeof info, SC_ROLE_TRAIL_ARM, 10400, 15991, 2293760, "board", "1.0"));
  sc_packet p;
  sc_packet_init(&p, static_cast<uint8_t>(n));
  for (int k = 0; k < 300; k++, t += 9615) {
    sc_sample s;
    for (int a = 0; a < 3; a++) {
      s.acc[a] = static_cast<int16_t>(k * 211 + a * 7919);
      s.gyro[a] = static_cast<int16_t>(-k * 307 - a * 104729);
    }
    const size_t length = sc_packet_add(&p, &s, t);
    if (length > 0) print(p.bytes, length);
  }
  // The ends of the range, over the end of the sequence.
  sc_packet_init(&p, static_cast<uint8_t>(n));
  p.sequence = 65534;
  for (unsigned k = 0; k < 4 * n; k++, t += 9615) {
    const sc_sample s = {{INT16_MIN, INT16_MAX, -1}, {0, 1, static_cast<int16_t>(INT16_MIN + 1)}};
    const size_t length = sc_packet_add(&p, &s, t);
    if (length > 0) print(p.bytes, length);
  }
  // Polling that is 0 to 2.5 ms late, every 50th reading missed; the IMU runs at 106 Hz instead of 104.
  sc_even_clock clock;
  sc_even_clock_init(&clock, 10400);
  uint32_t noise = 1;
  for (int k = 0; k < 4000; k++) {
    noise = noise * 1664525u + 1013904223u;
    if (k % 50 == 49) continue;
    const double truth = k * 1e6 / 106;
    const uint32_t seen = static_cast<uint32_t>(truth) + (noise >> 16) % 2500;
    const uint32_t t = sc_even_time(&clock, seen);
    if (k >= 3000) std::printf("%d ", static_cast<int32_t>(t - static_cast<uint32_t>(truth)));
  }
  std::printf("\n");
  for (unsigned mtu : {23u, 50u, 185u, 247u, 512u}) std::printf("%u ", sc_samples_for_mtu(mtu));
  std::printf("\n");
}
