// See Arduino.h.
#pragma once
#include "Arduino.h"

enum BLEProperty { BLERead = 0x02, BLEWriteWithoutResponse = 0x04, BLEWrite = 0x08, BLENotify = 0x10 };
enum BLECharacteristicEvent { BLESubscribed = 0, BLEUnsubscribed = 1, BLEWritten = 3 };  // BLERead is 2, a property too
enum BLEDeviceEvent { BLEConnected, BLEDisconnected, BLEDiscovered };

class BLEDevice {};

class BLECharacteristic;
typedef void (*BLECharacteristicEventHandler)(BLEDevice device, BLECharacteristic characteristic);
typedef void (*BLEDeviceEventHandler)(BLEDevice device);

class BLECharacteristic {
 public:
  BLECharacteristic(const char *uuid, uint16_t properties, int size, bool fixedLength = false);
  int readValue(uint8_t value[], int length);
  int writeValue(const uint8_t value[], int length, bool withResponse = true);
  bool subscribed();
  void setEventHandler(int event, BLECharacteristicEventHandler handler);
  const char *const uuid_;
};

class BLEUnsignedCharCharacteristic : public BLECharacteristic {
 public:
  BLEUnsignedCharCharacteristic(const char *uuid, uint16_t properties);
  using BLECharacteristic::writeValue;
  int writeValue(unsigned char value);
};

class BLEService {
 public:
  explicit BLEService(const char *uuid);
  void addCharacteristic(BLECharacteristic &characteristic);
  const char *const uuid_;
};

class BLELocalDevice {
 public:
  int begin();
  void poll();
  int advertise();
  bool setLocalName(const char *name);
  void setDeviceName(const char *name);
  void setConnectionInterval(uint16_t minimum, uint16_t maximum);
  bool setAdvertisedService(const BLEService &service);
  void addService(BLEService &service);
  void setEventHandler(BLEDeviceEvent event, BLEDeviceEventHandler handler);
};

extern BLELocalDevice &BLE;
