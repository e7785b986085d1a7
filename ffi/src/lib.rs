//! The C API of Rimewise: conversion and checks only.
