"""Units: conversion and parsing of numbers, text, days, masses and energies; nothing else."""
