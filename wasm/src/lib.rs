//! The npm package of Rimewise: conversion only.
