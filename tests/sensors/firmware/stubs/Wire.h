// See Arduino.h.
#pragma once
#include "Arduino.h"

class TwoWire {
 public:
  void begin();
  void setClock(uint32_t hz);
  void beginTransmission(uint8_t address);
  uint8_t endTransmission(bool stop = true);
  size_t write(uint8_t value);
  size_t requestFrom(uint8_t address, size_t n, bool stop = true);
  int available();
  int read();
};

extern TwoWire Wire;
extern TwoWire Wire1;
