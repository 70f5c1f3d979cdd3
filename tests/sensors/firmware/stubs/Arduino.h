/*
 * Stubs: just enough declarations for a compiler to check the sketch's syntax, names and types. Nothing here runs, and
 * a board's own core and library may still differ; the declarations follow the public Arduino and ArduinoBLE
 * reference, written from memory.
 */
#pragma once
#include <stddef.h>
#include <stdint.h>

#define HIGH 1
#define LOW 0
#define INPUT 0
#define OUTPUT 1
#define LED_BUILTIN 13
#define constrain(x, low, high) ((x) < (low) ? (low) : ((x) > (high) ? (high) : (x)))

void pinMode(int pin, int mode);
void digitalWrite(int pin, int value);
int digitalRead(int pin);
int analogRead(int pin);
void delay(unsigned long ms);
unsigned long millis();
unsigned long micros();
