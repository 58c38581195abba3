import streamlit as st
st.title("Show")
